import { readFile, realpath, stat } from 'node:fs/promises'
import { extname, join, sep } from 'node:path'

/** A file of the screens, ready to send. */
export type RendererFile = { bytes: Buffer; type: string }

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
}

/** The parts of an address's path, or undefined where one of them could lead anywhere but down. */
const partsOf = (pathname: string): string[] | undefined => {
  let plain: string
  try {
    plain = decodeURIComponent(pathname)
  } catch (error) {
    if (error instanceof URIError) return undefined
    throw error
  }
  if (!plain.startsWith('/') || /[\\\0:]/.test(plain)) return undefined
  const parts = plain.slice(1).split('/')
  return parts.some((part) => part === '..' || part === '.' || (part === '' && parts.length > 1))
    ? undefined
    : parts
}

const notThere = (error: unknown): boolean =>
  error instanceof Error &&
  'code' in error &&
  ['ENOENT', 'ENOTDIR', 'ENAMETOOLONG', 'EISDIR'].includes(String(error.code))

/**
 * The file behind an address's path ('/' is index.html), or undefined where there is none that may be given: only
 * files of known kinds inside the folder, after every link is followed. The path comes from outside and is never
 * trusted; other errors of the disk throw.
 */
export const rendererFile = async (folder: string, pathname: string): Promise<RendererFile | undefined> => {
  const parts = partsOf(pathname === '/' ? '/index.html' : pathname)
  const type = parts && types[extname(parts.at(-1) ?? '').toLowerCase()]
  if (!parts || !type) return undefined
  try {
    const root = await realpath(folder)
    const file = await realpath(join(root, ...parts))
    if (!file.startsWith(root + sep) || !(await stat(file)).isFile()) return undefined
    return { bytes: await readFile(file), type }
  } catch (error) {
    if (notThere(error)) return undefined
    throw error
  }
}
