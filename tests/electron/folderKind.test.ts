import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { kindOfBookFolder } from '../../electron/bookFolder.ts'
import { folderKind, linuxMounts, macMounts, type FolderFacts } from '../../electron/folderKind.ts'
import { folderWarning } from '../../shared/folderWarning.ts'

const mounts = linuxMounts(
  [
    '/dev/sda2 / ext4 rw,relatime 0 0',
    'tmpfs /tmp tmpfs rw 0 0',
    'server:/jobs /mnt/jobs nfs4 rw,vers=4.2 0 0',
    '//server/office /mnt/the\\040office cifs rw 0 0',
    'ann@server: /home/ann/far fuse.sshfs rw 0 0',
    '/dev/sdb1 /mnt/jobs/stick vfat rw 0 0',
    'ann /run/user/1000/gvfs fuse.gvfsd-fuse rw 0 0',
    'D: /mnt/d 9p rw 0 0',
    '/dev/fuse /media/ntfs fuseblk rw 0 0',
  ].join('\n'),
)

const linux = (folder: string, more: Partial<FolderFacts> = {}): string =>
  folderKind({ folder, home: '/home/ann', platform: 'linux', env: {}, mounts, namesIn: () => [], ...more })

test.each([
  ['/home/ann/.local/share/Bracework', 'own'],
  ['/mnt/jobs', 'network'],
  ['/mnt/jobs/books/2026', 'network'],
  ['/mnt/jobsite', 'own'],
  ['/mnt/jobs/stick/books', 'own'],
  ['/mnt/the office/books', 'network'],
  ['/home/ann/far/away', 'network'],
  ['/run/user/1000/gvfs/smb-share:server=s', 'network'],
  ['/mnt/d/books', 'network'],
  ['/media/ntfs/books', 'own'],
] as const)('on Linux a book in %s lies on a disk that is %s', (folder, kind) => {
  expect(linux(folder)).toBe(kind)
})

test.each([
  ['\\\\server\\office\\books', 'network'],
  ['\\\\?\\UNC\\server\\office', 'network'],
  ['\\\\?\\C:\\Users\\Ann', 'own'],
  ['\\\\.\\C:\\Users\\Ann', 'own'],
  ['C:\\Users\\Ann\\AppData\\Roaming\\Bracework', 'own'],
  ['C:\\Users\\Ann\\Kept\\Books', 'shared'],
  ['C:\\Users\\Ann\\KeptToo', 'own'],
  ['C:\\Books', 'own'],
] as const)('on Windows a book in %s is %s', (folder, kind) => {
  const env = {
    HOMEDRIVE: 'C:',
    SystemDrive: 'C:',
    SomebodysDrive: 'C:\\Users\\Ann\\Kept',
    OtherDrive: 'D:\\',
    Path: 'C:\\Books',
  }
  const facts = { home: 'C:\\Users\\Ann', platform: 'win32', env, mounts: [], namesIn: () => [] } as const
  expect(folderKind({ folder, ...facts })).toBe(kind)
})

test.each([
  ['/Volumes/jobs/books', 'network'],
  ['/Volumes/Stick/books', 'own'],
  ['/Users/ann/Library/CloudStorage/Somebody/books', 'shared'],
  ['/Users/ann/Library/Mobile Documents/books', 'shared'],
  ['/Users/ann/Library/Application Support/Bracework', 'own'],
] as const)('on a Mac a book in %s is %s', (folder, kind) => {
  const listed = macMounts(
    [
      '/dev/disk3s1s1 on / (apfs, sealed, local, read-only)',
      '//ann@server/jobs on /Volumes/jobs (smbfs, nodev, nosuid)',
      '/dev/disk5s1 on /Volumes/Stick (msdos, local)',
    ].join('\n'),
  )
  const facts = {
    home: '/Users/ann',
    platform: 'darwin',
    env: {},
    mounts: listed,
    namesIn: () => [],
  } as const
  expect(folderKind({ folder, ...facts })).toBe(kind)
})

test('a folder is known as kept alike by what lies in it or above it, but not by what lies in the home folder', () => {
  const holding = (at: string, name: string) =>
    linux('/home/ann/books/2026', { namesIn: (folder) => (folder === at ? ['jobs', name] : ['jobs']) })
  for (const name of [
    '.stfolder',
    '.keptsync.log',
    '._sync_a1.db',
    '.somebox',
    '.somebox.cache',
    '.tmp.drivedownload',
  ]) {
    expect(holding('/home/ann/books', name), name).toBe('shared')
    expect(holding('/home/ann/books/2026', name), name).toBe('shared')
    expect(holding('/home/ann', name), name).toBe('own')
  }
  for (const name of ['.git', 'sync', 'box', '.config', 'asynchronous.txt', '.mailboxes'])
    expect(holding('/home/ann/books', name), name).toBe('own')
})

test('a real folder is looked at through its links, even one that isn’t there yet', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-kept-'))
  mkdirSync(join(folder, 'kept', 'books'), { recursive: true })
  writeFileSync(join(folder, 'kept', '.stfolder'), '')
  mkdirSync(join(folder, 'plain'))
  symlinkSync(join(folder, 'kept', 'books'), join(folder, 'plain', 'link'))
  expect(kindOfBookFolder(join(folder, 'plain', 'a.book'))).toBe('own')
  expect(kindOfBookFolder(join(folder, 'plain', 'link', 'a.book'))).toBe('shared')
  expect(kindOfBookFolder(join(folder, 'kept', 'not', 'there', 'a.book'))).toBe('shared')
  rmSync(folder, { recursive: true })
})

test('each kind but the ordinary one is warned of, in plain words with the way out', () => {
  expect(folderWarning('own')).toBeUndefined()
  for (const kind of ['network', 'shared'] as const) {
    expect(folderWarning(kind)).toMatch(/^The job book lies .*Keep it .*copies over there\.$/)
    expect(folderWarning(kind)).not.toMatch(/sync|cloud|network|server|file|database/i)
  }
})
