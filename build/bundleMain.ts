import { build, type InlineConfig } from 'vite'
import { inProject } from './paths.ts'

/** Packages that stay outside the bundle: Electron brings itself, and the store has a compiled part. */
export const keptOutside = ['electron', 'better-sqlite3']

const nodeBundle = (entry: string, name: string): InlineConfig => ({
  configFile: false,
  root: inProject('.'),
  logLevel: 'warn',
  publicDir: false,
  ssr: { noExternal: true, external: keptOutside, target: 'node' },
  build: {
    ssr: inProject(entry),
    outDir: inProject('build/out/main'),
    emptyOutDir: false,
    target: 'node22',
    minify: false,
    sourcemap: false,
    rolldownOptions: {
      output: { format: 'cjs', entryFileNames: name, chunkFileNames: '[name]-[hash].cjs' },
    },
  },
})

/** The main process as one CommonJS file, with late imports (the PDF painter) as files beside it. */
export const bundleMain = async (): Promise<void> => {
  await build(nodeBundle('electron/main.ts', 'main.cjs'))
}

/** The thread that copies of the book are made in, as a CommonJS file beside the main process. */
export const bundleKeepingWorker = async (): Promise<void> => {
  await build(nodeBundle('db/keeping/worker.ts', 'keepingWorker.cjs'))
}

/** The preload as one CommonJS file: a sandboxed preload can require nothing but `electron`. */
export const bundlePreload = async (): Promise<void> => {
  await build(nodeBundle('electron/preload.ts', 'preload.cjs'))
}
