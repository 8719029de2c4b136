import { readFileSync } from 'node:fs'

type Entry = { files?: Record<string, Entry>; size?: number; offset?: string; unpacked?: boolean }

/** A file of a packed program's archive. `bytes` is empty where the file lies beside the archive instead. */
export type ArchivedFile = { path: string; unpacked: boolean; bytes: Buffer }

/**
 * Reads an asar archive: four little-endian 32-bit numbers (4, the head's length with its padding, that less 4, the
 * text's length), the head as JSON text, then the files one after another.
 */
export const readArchive = (path: string): ArchivedFile[] => {
  const archive = readFileSync(path)
  const textLength = archive.readUInt32LE(12)
  const start = 8 + archive.readUInt32LE(4)
  const filesIn = (entry: Entry, trail: string): ArchivedFile[] => {
    if (entry.files)
      return Object.entries(entry.files).flatMap(([name, inner]) => filesIn(inner, `${trail}/${name}`))
    const from = start + Number(entry.offset ?? 0)
    const unpacked = entry.unpacked === true
    return [
      {
        path: trail.slice(1),
        unpacked,
        bytes: archive.subarray(from, from + (unpacked ? 0 : (entry.size ?? 0))),
      },
    ]
  }
  return filesIn(JSON.parse(archive.toString('utf8', 16, 16 + textLength)), '')
}
