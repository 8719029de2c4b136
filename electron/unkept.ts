import { rmSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import type { DownloadItem, Session } from 'electron'
import { driveWords, roomLeft } from '../db/drive.ts'

/** tell shows the person a sentence; log takes what the person needn't read. */
export type Telling = { tell: (sentence: string) => void; log: (line: string) => void }

type Item = Pick<DownloadItem, 'getSavePath' | 'getReceivedBytes' | 'getTotalBytes' | 'getFilename' | 'once'>

/** Takes away what was begun under the file's name: a piece of it, or nothing at all. What lay there before and is whole stays. */
function clearBegun(item: Item, path: string): void {
  const size = statSync(path, { throwIfNoEntry: false })?.size
  const isPiece = size === item.getReceivedBytes() && size < item.getTotalBytes()
  if (size === 0 || isPiece) rmSync(path, { force: true })
}

function sentenceFor(item: Item, path: string): string {
  const name = `“${basename(path)}”`
  const drive = driveWords(path)
  if (roomLeft(path) < Math.max(item.getTotalBytes(), 1))
    return `There is no room left on ${drive}, so ${name} wasn’t kept. Make room, or keep it somewhere else.`
  return `${name} couldn’t be written on ${drive}, so it wasn’t kept. Check the drive, or keep it somewhere else.`
}

/** What became of a file once it is done with: one that broke off is told and leaves nothing half made; one the person put away is no matter. */
export function watchItem(item: Item, { tell, log }: Telling): void {
  item.once('done', (_event, state) => {
    if (state !== 'interrupted') return
    const path = item.getSavePath()
    if (path === '') return tell(`“${item.getFilename()}” wasn’t kept. Try again.`)
    try {
      clearBegun(item, path)
    } catch (error) {
      log(`a file that broke off couldn’t be cleared away: ${String(error)}`)
    }
    tell(sentenceFor(item, path))
  })
}

/** Sees that a paper, a picture, a list or a job that is put into a folder is there whole, or that the person is told it isn't. */
export const watchKeeping = (session: Pick<Session, 'on'>, telling: Telling): void =>
  void session.on('will-download', (_event, item) => watchItem(item, telling))
