import { copyFileSync, cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { inProject, outFolder } from './paths.ts'

/** The faces the papers and screens use, with the licences that must travel with them. */
export const fontFiles = [
  '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf',
  '@expo-google-fonts/ibm-plex-sans/500Medium/IBMPlexSans_500Medium.ttf',
  '@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf',
  'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
]

const licences = [
  ['@expo-google-fonts/ibm-plex-sans/LICENSE_FONT', 'IBMPlexSans-LICENSE.txt'],
  ['dejavu-fonts-ttf/LICENSE', 'DejaVuSans-LICENSE.txt'],
] as const

const freshFolder = (name: string): string => {
  const folder = join(outFolder, name)
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  return folder
}

/** Puts the fonts and their licences in build/out/fonts, flat, by their own names. */
export const copyFonts = (): void => {
  const folder = freshFolder('fonts')
  for (const file of fontFiles) copyFileSync(inProject(`node_modules/${file}`), join(folder, basename(file)))
  for (const [from, to] of licences) copyFileSync(inProject(`node_modules/${from}`), join(folder, to))
}

/** Puts the English messages and every other language's file in build/out/languages. */
export const copyLanguages = (): void => {
  const folder = freshFolder('languages')
  for (const name of readdirSync(inProject('shared/language')).filter((file) => file.endsWith('.json')))
    copyFileSync(inProject(`shared/language/${name}`), join(folder, name))
}

/** Puts the book's numbered steps in build/out/migrations. */
export const copyMigrations = (): void => {
  cpSync(inProject('db/migrations'), freshFolder('migrations'), { recursive: true })
}
