import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs'
import { homedir } from 'node:os'
import { dirname } from 'node:path'
import type { FolderKind } from '../shared/folderWarning.ts'
import { folderKind, linuxMounts, macMounts, type Mount } from './folderKind.ts'

const mountsHere = (): Mount[] => {
  if (process.platform === 'linux')
    return existsSync('/proc/mounts') ? linuxMounts(readFileSync('/proc/mounts', 'utf8')) : []
  if (process.platform !== 'darwin') return []
  return macMounts(spawnSync('/sbin/mount', { encoding: 'utf8', timeout: 2000 }).stdout ?? '')
}

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}

/** The folder itself, with links and a Windows drive letter followed to what they stand for; the nearest that is there. */
const truePlace = (folder: string): string => {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(at)) return realpathSync.native(at)
    if (dirname(at) === at) return folder
  }
}

/** Where the book's folder lies on this machine. Anything that can't be found out counts as an ordinary folder. */
export const kindOfBookFolder = (bookPath: string): FolderKind =>
  folderKind({
    folder: truePlace(dirname(bookPath)),
    home: truePlace(homedir()),
    platform: process.platform,
    env: process.env,
    mounts: mountsHere(),
    namesIn,
  })
