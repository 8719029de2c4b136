import { createHash } from 'node:crypto'
import { closeSync, openSync, readSync, statSync, writeSync } from 'node:fs'
import type { WorkStage } from '../../shared/keeping/workStands.ts'
import { unwatched, type WorkStand } from './workStand.ts'

const readAtOnce = 1 << 20

/** Reads a file from its beginning, a piece at a time; the piece holds only until the next is asked for. */
function* piecesOf(path: string): Generator<Uint8Array> {
  const piece = Buffer.alloc(readAtOnce)
  const file = openSync(path, 'r')
  try {
    for (let read = readSync(file, piece); read > 0; read = readSync(file, piece))
      yield piece.subarray(0, read)
  } finally {
    closeSync(file)
  }
}

/** The hash of a file as it lies on the disk. stage: what the person is told of it meanwhile. */
export function hashOfFile(
  path: string,
  stand: WorkStand = unwatched,
  stage: WorkStage = 'reading back',
): string {
  const hash = createHash('sha256')
  let done = 0
  stand.begin(stage, statSync(path).size)
  for (const piece of piecesOf(path)) {
    hash.update(piece)
    stand.reach((done += piece.length))
  }
  return hash.digest('hex')
}

function writeWhole(file: number, piece: Uint8Array): void {
  for (let written = 0; written < piece.length;) written += writeSync(file, piece, written)
}

/** A file, the name its twin gets, and what the person is told of it meanwhile. */
type Twin = { from: string; to: string; stage: WorkStage }

/** A file's twin under another name, in place of what lay there; not yet forced to disk. */
export function copyFile({ from, to, stage }: Twin, stand: WorkStand = unwatched): void {
  let done = 0
  stand.begin(stage, statSync(from).size)
  const file = openSync(to, 'w')
  try {
    for (const piece of piecesOf(from)) {
      writeWhole(file, piece)
      stand.reach((done += piece.length))
    }
  } finally {
    closeSync(file)
  }
}
