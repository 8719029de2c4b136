import { mkdir, open, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { bad, good, type Result } from '../../shared/problem.ts'

type NewFile = { name: string; bytes: Uint8Array }

async function writeOne(folder: string, { name, bytes }: NewFile): Promise<void> {
  const unfinished = join(folder, `.${name}.${process.pid}.part`)
  try {
    const file = await open(unfinished, 'wx')
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(unfinished, join(folder, name))
  } catch (error) {
    await rm(unfinished, { force: true })
    throw error
  }
}

/** Writes files whole or not at all, each under a temporary name first. The folder is made if it isn't there. */
export async function writeFiles(folder: string, files: NewFile[]): Promise<Result<undefined>> {
  try {
    await mkdir(folder, { recursive: true })
    for (const file of files) await writeOne(folder, file)
    return good(undefined)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason'
    return bad({
      code: 'unwritable',
      field: '--out',
      message: `'${folder}' can’t be written to (${code}), accepted is a folder you may write in`,
    })
  }
}
