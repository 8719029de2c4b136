import { existsSync, readdirSync, readFileSync, statfsSync, statSync } from 'node:fs'
import { basename, dirname, join, parse, resolve } from 'node:path'

/** Folders a system mounts drives of its own in; what lies there is the computer's own disk to the person. */
const ownMounts = new Set([
  '/',
  '/home',
  '/var',
  '/tmp',
  '/usr',
  '/opt',
  '/root',
  '/boot',
  '/private',
  '/System/Volumes/Data',
])

/** The part of a path that is there: the path itself, or the nearest folder above it. */
export function nearestThere(path: string): string {
  const whole = resolve(path)
  return existsSync(whole) || dirname(whole) === whole ? whole : nearestThere(dirname(whole))
}

function mountPoints(): string[] {
  try {
    return readFileSync('/proc/self/mounts', 'utf8')
      .split('\n')
      .map((line) => (line.split(' ')[1] ?? '').replaceAll('\\040', ' '))
      .filter((point) => point !== '')
  } catch {
    // Not a Linux machine, or one that doesn't tell: the drive then goes without a name.
    return ['/']
  }
}

function mountOf(path: string, platform: NodeJS.Platform): string {
  if (platform === 'darwin') return /^\/Volumes\/[^/]+/.exec(path)?.[0] ?? '/'
  const holds = (point: string): boolean => point === '/' || path === point || path.startsWith(`${point}/`)
  return (
    mountPoints()
      .filter(holds)
      .sort((a, b) => b.length - a.length)[0] ?? '/'
  )
}

/**
 * The drive a path lies on, as the person calls it: 'E:' on Windows, a memory stick's name, '' for the computer's own disk.
 * '/media/peg/STICK/gates' is 'STICK'.
 */
export function driveName(path: string, platform: NodeJS.Platform = process.platform): string {
  if (platform === 'win32') return parse(resolve(path)).root.replace(/\\$/, '')
  const mount = mountOf(nearestThere(path), platform)
  return ownMounts.has(mount) ? '' : basename(mount)
}

/** The drive in a sentence: 'the drive “STICK”', or 'this computer’s disk'. */
export function driveWords(path: string): string {
  const name = driveName(path)
  return name === '' ? 'this computer’s disk' : `the drive “${name}”`
}

/** Whether two paths lie on one disk: what takes the one can take the other. */
export const sameDisk = (one: string, other: string): boolean =>
  statSync(nearestThere(one)).dev === statSync(nearestThere(other)).dev

/** How many bytes may still be written where a path lies. */
export function roomLeft(path: string): number {
  const { bavail, bsize } = statfsSync(nearestThere(path))
  return bavail * bsize
}

const foldersIn = (folder: string): string[] => {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((one) => one.isDirectory())
      .map((one) => join(folder, one.name))
  } catch {
    // No such folder on this machine, or not ours to look into.
    return []
  }
}

/** The folders of drives that were plugged in, as this kind of machine shows them; none on Windows, where a folder is chosen by a window. */
export function pluggedDrives(platform: NodeJS.Platform = process.platform): string[] {
  if (platform === 'win32') return []
  const found =
    platform === 'darwin'
      ? foldersIn('/Volumes')
      : ['/media', '/run/media'].flatMap((base) => foldersIn(base).flatMap((one) => [one, ...foldersIn(one)]))
  const points = new Set(mountPoints())
  return platform === 'darwin'
    ? found.filter((one) => !sameDisk(one, '/'))
    : found.filter((one) => points.has(one))
}
