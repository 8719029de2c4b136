import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Font } from '@pdf-lib/fontkit'
import type { Weight } from '../shared/papers/page.ts'

/** A typeface of the papers: its file's bytes, and the same opened for asking what it covers and how wide it sets. */
export type Face = { name: string; bytes: Uint8Array; font: Font }

/** The text face in its weights, and for each weight the face that steps in for characters it lacks. */
export type PaperFonts = Record<Weight, { text: Face; other: Face }>

const files = {
  regular: '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf',
  semibold: '@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf',
  other: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  otherBold: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
}

/** Where a face lies: beside the built program, else among the packages it is built from. */
function placeOf(file: string): string {
  const built = fileURLToPath(new URL(`../fonts/${file.slice(file.lastIndexOf('/') + 1)}`, import.meta.url))
  return existsSync(built) ? built : fileURLToPath(new URL(`../node_modules/${file}`, import.meta.url))
}

async function loadFace(file: string): Promise<Face> {
  const [{ default: fontkit }, bytes] = await Promise.all([
    import('@pdf-lib/fontkit'),
    readFile(placeOf(file)),
  ])
  return { name: file.slice(file.lastIndexOf('/') + 1, -4), bytes, font: fontkit.create(bytes) }
}

const openFaces = async (): Promise<PaperFonts> => {
  const [regular, semibold, other, otherBold] = await Promise.all(
    [files.regular, files.semibold, files.other, files.otherBold].map(loadFace),
  )
  if (!regular || !semibold || !other || !otherBold) throw new Error('a typeface of the papers is missing')
  return { regular: { text: regular, other }, semibold: { text: semibold, other: otherBold } }
}

const opened: { faces?: Promise<PaperFonts> } = {}

/** The faces of the papers, read from disk once. Rejects when a file is missing: no paper is painted in a chance face. */
export function loadFonts(): Promise<PaperFonts> {
  opened.faces ??= openFaces()
  return opened.faces
}
