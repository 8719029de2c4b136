import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { bundleIfStale } from '../bundle.ts'
import { outFolder } from '../paths.ts'
import { written, type Effort, type Measured } from './row.ts'

/** KB gzip that the screens may take before fonts. */
const most = 150

type Piece = { name: string; kb: number }

/** Every script, sheet and page of the renderer, gzipped. Threads' scripts and what is loaded for one screen alone are in it. */
function pieces(folder: string): Piece[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(js|css|html|svg)$/.test(name))
    .map((name) => ({ name, kb: gzipSync(readFileSync(join(folder, name))).length / 1024 }))
    .sort((a, b) => b.kb - a.kb)
}

const sum = (list: Piece[]): number => list.reduce((total, { kb }) => total + kb, 0)

/** How much the screens weigh before their fonts: what the first page loads, and all there is. */
export async function screenSize(_effort: Effort): Promise<Measured> {
  await bundleIfStale()
  const folder = join(outFolder, 'renderer')
  const all = pieces(folder)
  const page = readFileSync(join(folder, 'index.html'), 'utf8')
  const first = all.filter(
    ({ name }) => name === 'index.html' || page.includes(name.split('/').at(-1) ?? name),
  )
  const value = sum(first)
  return {
    row: {
      ...{
        name: 'screen-size',
        value,
        unit: 'KB gzip',
        against: `${most} KB gzip before fonts`,
        ratio: value / most,
        aim: 1,
      },
      holds: value <= most,
    },
    said: [
      `what the first page loads: ${first.map(({ name, kb }) => `${name} ${written(kb)}`).join(', ')}`,
      `with what is loaded later, threads among it: ${written(sum(all))} KB (${all
        .slice(0, 6)
        .map(({ name, kb }) => `${name} ${written(kb)}`)
        .join(', ')} …)`,
    ],
  }
}
