import { spawn } from 'node:child_process'
import { tracer } from './record.ts'

/** How a disk fails a program: which call of the system, on which files (none named: on all), with what answer, from each thread's call number `from` on. */
export type DiskFault = {
  call: 'pwrite64' | 'fsync' | 'rename' | 'copy_file_range' | 'mkdir'
  error: 'ENOSPC' | 'EIO'
  files: string[]
  from: number
}

/**
 * From now on the disk fails a running program so, until it is mended: the tracer takes hold of the program and answers its calls itself. Needs
 * leave to trace another process (root, or ptrace_scope 0); throws in the tracer's words where there is none.
 */
export function breakDisk(
  pid: number,
  { call, error, files, from }: DiskFault,
): Promise<{ mend: () => Promise<void> }> {
  const named = files.flatMap((file) => ['-P', file])
  const rule = ['-e', `trace=${call}`, '-e', `inject=${call}:error=${error}:when=${from}+`]
  const tracing = spawn(tracer(), ['-f', ...named, ...rule, '-o', '/dev/null', '-p', String(pid)], {
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const ended = new Promise<void>((done) => tracing.once('exit', () => done()))
  const mend = async (): Promise<void> => {
    tracing.kill('SIGINT')
    await ended
  }
  return new Promise((done, fail) => {
    let said = ''
    tracing.stderr.on('data', (words: Buffer) => {
      said += words.toString('utf8')
      if (/attached/.test(said)) done({ mend })
    })
    void ended.then(() => fail(new Error(`the tracer took no hold of the program: ${said}`)))
  })
}
