import { readFileSync, statSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { faultWords } from './discreet.ts'

/** A job's file that the person pressed in a folder: its name and what stands in it. */
export type HandedFile = { name: string; text: string }

/** No job's file is heavier; one that is isn't read at all. Bytes. */
const mostBytes = 48 * 1024 * 1024

/** Holds the file that was handed over last, until the screen asks for it. */
export type HandedFiles = {
  /** Looks through what the program was started with; folder is where that start stood. */
  note: (args: readonly string[], folder: string) => void
  /** The file, once; null where there is none or it can't be read. */
  take: () => HandedFile | null
}

const read = (path: string, log: (line: string) => void): HandedFile | null => {
  try {
    const { size } = statSync(path)
    if (size > mostBytes) throw new RangeError(`a file of ${size} bytes is too heavy for a job`)
    const text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path))
    return { name: basename(path), text }
  } catch (error) {
    log(`a file handed over can’t be read: ${faultWords(error)}`)
    return null
  }
}

/**
 * Files that a press in a folder hands to the program: only their ending says that they are meant for it. Nothing is done
 * with one but to show what it holds; the person brings it in or leaves it. ending is without its dot.
 */
export const handedFiles = (ending: string, log: (line: string) => void): HandedFiles => {
  const now: { path?: string | undefined } = {}
  return {
    note: (args, folder) => {
      const named = args.findLast((arg) => !arg.startsWith('-') && arg.toLowerCase().endsWith(`.${ending}`))
      if (named !== undefined) now.path = resolve(folder, named)
    },
    take: () => {
      const { path } = now
      now.path = undefined
      return path === undefined ? null : read(path, log)
    },
  }
}
