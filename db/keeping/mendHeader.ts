import { closeSync, openSync, readSync, statSync, writeSync } from 'node:fs'
import { bookMark } from '../connection.ts'

const pageSize = 4096
const signature = 'SQLite format 3\0'

/**
 * The first 100 bytes of a book say how the rest is to be read. Every book of ours begins alike but for how many pages it has and its layout, so a
 * beginning that was overwritten can be written anew on a twin of the file. latest: the layout to give it where its own can't be believed.
 * Gives whether anything had to be mended.
 */
export function mendHeader(path: string, latest: number): boolean {
  const head = Buffer.alloc(100)
  const file = openSync(path, 'r+')
  try {
    readSync(file, head, 0, head.length, 0)
    const stood = Buffer.from(head)
    const layout = head.readUInt32BE(60)
    head.write(signature, 0, 'latin1')
    head.writeUInt16BE(pageSize, 16)
    head.set([2, 2, 0, 64, 32, 32], 18)
    head.writeUInt32BE(Math.floor(statSync(path).size / pageSize), 28)
    // No list of free pages: nothing is written to the twin.
    head.fill(0, 32, 40)
    head.writeUInt32BE(4, 44)
    head.fill(0, 52, 56)
    head.writeUInt32BE(1, 56)
    head.writeUInt32BE(layout >= 1 && layout <= latest ? layout : latest, 60)
    head.fill(0, 64, 68)
    head.writeUInt32BE(bookMark, 68)
    head.copy(head, 92, 24, 28)
    if (head.equals(stood)) return false
    writeSync(file, head, 0, head.length, 0)
    return true
  } finally {
    closeSync(file)
  }
}
