import { fileURLToPath } from 'node:url'

/** The project's own folder. */
export const projectRoot = fileURLToPath(new URL('..', import.meta.url))

/** A path inside the project, as the operating system writes it. */
export const inProject = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url))

/** Where everything built lands. Nothing else in the project is generated. */
export const outFolder = inProject('build/out')
