import { posix, win32 } from 'node:path'
import type { FolderKind } from '../shared/folderWarning.ts'

/** What is known of a folder. mounts: each place where a disk is joined on, with its kind; namesIn gives what lies in a folder. */
export type FolderFacts = {
  folder: string
  home: string
  platform: NodeJS.Platform
  env: Readonly<Record<string, string | undefined>>
  mounts: readonly Mount[]
  namesIn: (folder: string) => readonly string[]
}

export type Mount = { at: string; kind: string }

/** Kinds of disk that lie on another machine. */
const networkKinds =
  /^(nfs\d?|cifs|smb\d?|smbfs|smb3|afpfs|webdav|davfs|9p|afs|ceph|glusterfs|lustre|ncpfs|ftp|fuse\.(sshfs|davfs2?|rclone|gvfsd-fuse|smbnetfs|curlftpfs|s3fs|glusterfs|ceph))$/

/** What a program that keeps folders alike on several machines leaves lying in them. */
const marks = [
  /^[._]+\w*sync[\w.-]*$/i,
  /^\.st(folder|ignore|versions)$/i,
  /^\.[a-z]+box(\.cache)?$/i,
  /^\.tmp\.drive(up|down)load$/i,
]

/** Folders under a Mac's own Library that are kept alike on several machines. */
const macShared = ['Library/CloudStorage', 'Library/Mobile Documents']

const isUnder = (folder: string, top: string, separator: string): boolean =>
  folder === top || folder.startsWith(top.endsWith(separator) ? top : top + separator)

const pathOf = (platform: NodeJS.Platform): typeof posix => (platform === 'win32' ? win32 : posix)

const isNetwork = ({ folder, platform, mounts }: FolderFacts): boolean => {
  if (platform === 'win32') return /^\\\\(?!\?\\|\.\\)|^\\\\\?\\UNC\\/i.test(folder)
  const holding = mounts
    .filter(({ at }) => isUnder(folder, at, '/'))
    .toSorted((a, b) => b.at.length - a.at.length)[0]
  return holding !== undefined && networkKinds.test(holding.kind)
}

/** The folder and those it lies in, up to the person's own and no further: what lies there concerns other things too. */
const upFrom = ({ folder, home, platform }: FolderFacts): string[] => {
  const { dirname } = pathOf(platform)
  const trail: string[] = []
  for (let at = folder; at !== home && dirname(at) !== at; at = dirname(at)) trail.push(at)
  return trail
}

/** A variable that names such a folder to other programs ends in "Drive" and holds more than a drive's letter. */
const namedByMachine = ({ folder, env, platform }: FolderFacts): boolean => {
  const { sep, isAbsolute, parse } = pathOf(platform)
  return Object.entries(env).some(
    ([name, value]) =>
      /drive(commercial|consumer)?$/i.test(name) &&
      value !== undefined &&
      isAbsolute(value) &&
      parse(value).root !== value &&
      isUnder(folder, value, sep),
  )
}

const isShared = (facts: FolderFacts): boolean =>
  namedByMachine(facts) ||
  (facts.platform === 'darwin' &&
    macShared.some((top) => isUnder(facts.folder, posix.join(facts.home, top), '/'))) ||
  upFrom(facts).some((folder) => facts.namesIn(folder).some((name) => marks.some((mark) => mark.test(name))))

/**
 * Where a folder lies, by how its disk is joined on and by what lies in it. Two machines that write in one book at once
 * can spoil it, and a program that copies it meanwhile can put an older page back: either is told, never forbidden.
 */
export const folderKind = (facts: FolderFacts): FolderKind => {
  if (isNetwork(facts)) return 'network'
  return isShared(facts) ? 'shared' : 'own'
}

const octal = (text: string): string =>
  text.replace(/\\([0-7]{3})/g, (_all, digits: string) => String.fromCharCode(Number.parseInt(digits, 8)))

/** The disks as Linux lists them: 'server:/jobs /mnt/jobs nfs4 rw 0 0', with a space written \040. */
export const linuxMounts = (text: string): Mount[] =>
  text
    .split('\n')
    .map((line) => line.split(' '))
    .flatMap(([, at, kind]) => (at && kind ? [{ at: octal(at), kind }] : []))

/** The disks as a Mac lists them: '//ann@server/jobs on /Volumes/jobs (smbfs, nodev)'. */
export const macMounts = (text: string): Mount[] =>
  text.split('\n').flatMap((line) => {
    const found = / on (.+) \(([^,)]+)/.exec(line)
    return found?.[1] && found[2] ? [{ at: found[1], kind: found[2] }] : []
  })
