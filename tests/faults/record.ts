import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { programNamed } from '../../build/machine.ts'
import { readTrace } from './readTrace.ts'
import type { Recording } from './recording.ts'

/** Every call by which a file or a folder can come to hold something else; one that the reader can't follow ends the test. */
const calls = [
  ...['open', 'openat', 'creat', 'close', 'write', 'writev', 'pwrite64', 'pwritev', 'pwritev2', 'lseek'],
  ...['fsync', 'fdatasync', 'sync_file_range', 'ftruncate', 'truncate', 'fallocate', 'copy_file_range'],
  ...['sendfile', 'rename', 'renameat', 'renameat2', 'link', 'linkat', 'unlink', 'unlinkat', 'mkdir'],
  ...['mkdirat', 'rmdir', 'dup', 'dup2', 'dup3', 'mmap'],
]

/** The tracer's path; a test that needs it fails by this sentence where there is none. */
export function tracer(): string {
  const path = programNamed('strace')
  if (path === undefined)
    throw new Error(
      'the power cut tests need strace: as root run "apt-get install strace", or npm test installs it',
    )
  return path
}

/** All that is in a folder: its files, and the folders in it, each before what it holds. */
function lyingIn(folder: string): Pick<Recording, 'before' | 'folders'> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()
  const isFile = (name: string): boolean => statSync(join(folder, name)).isFile()
  const files = names
    .filter(isFile)
    .map((name): [string, Uint8Array] => [name, readFileSync(join(folder, name))])
  return { before: new Map(files), folders: names.filter((name) => !isFile(name)) }
}

/** Runs a script of ours in Node under the tracer and gives all that it did to a folder. Throws where the script failed. */
export function record(folder: string, script: string, args: readonly string[]): Recording {
  const lying = lyingIn(folder)
  const place = mkdtempSync(join(tmpdir(), 'bracework-trace-'))
  try {
    const trace = join(place, 'calls')
    const options = [
      '-f',
      '--seccomp-bpf',
      '-y',
      '-xx',
      '-s',
      '16777216',
      '-e',
      `trace=${calls.join(',')}`,
      '-e',
      'signal=none',
    ]
    const run = [process.execPath, '--no-warnings', script, ...args]
    const { status, stderr } = spawnSync(tracer(), [...options, '-o', trace, ...run], {
      encoding: 'utf8',
      env: { ...process.env, UV_USE_IO_URING: '0' },
      maxBuffer: 64 * 1024 * 1024,
    })
    if (status !== 0) throw new Error(`the recorded program failed (${status}): ${stderr}`)
    const events = readTrace(readFileSync(trace, 'latin1'), folder, [...lying.before.keys()], lying.folders)
    return { ...lying, events: events }
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}
