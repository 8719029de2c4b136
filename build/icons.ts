import { readFileSync, writeFileSync } from 'node:fs'
import { inProject } from './paths.ts'
import { startChromium } from './chromium.ts'

/** One size of the icon, in points along its side, as a PNG. */
export type Picture = { size: number; png: Buffer }

/** Sizes a Windows icon holds; 256 is written 0 there. */
export const windowsSizes = [16, 24, 32, 48, 64, 128, 256]

/** Names a Mac's icon file has for each size (the second of a name is the same picture for a fine display). */
export const macNames: readonly (readonly [name: string, size: number])[] = [
  ['icp4', 16],
  ['icp5', 32],
  ['ic11', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
  ['ic10', 1024],
]

/** The icon's drawing painted at each size by the browser. */
const paint = async (sizes: readonly number[]): Promise<Picture[]> => {
  const svg = readFileSync(inProject('build/icons/icon.svg'), 'utf8')
  const browser = await startChromium()
  const pictures: Picture[] = []
  for (const size of sizes) {
    const page = await browser.newPage({ viewport: { width: size, height: size } })
    await page.setContent(
      `<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`,
    )
    pictures.push({ size, png: await page.screenshot({ omitBackground: true }) })
    await page.close()
  }
  await browser.close()
  return pictures
}

/** A Windows icon file: six bytes, sixteen for each picture, then the pictures. */
export const windowsIcon = (pictures: readonly Picture[]): Buffer => {
  const head = Buffer.alloc(6 + 16 * pictures.length)
  head.writeUInt16LE(1, 2)
  head.writeUInt16LE(pictures.length, 4)
  let at = head.length
  for (const [index, { size, png }] of pictures.entries()) {
    const entry = 6 + 16 * index
    head.writeUInt8(size % 256, entry)
    head.writeUInt8(size % 256, entry + 1)
    head.writeUInt16LE(1, entry + 4)
    head.writeUInt16LE(32, entry + 6)
    head.writeUInt32LE(png.length, entry + 8)
    head.writeUInt32LE(at, entry + 12)
    at += png.length
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)])
}

/** A Mac's icon file: its mark and length, then each picture under its name, high byte first. */
export const macIcon = (pictures: readonly Picture[]): Buffer => {
  const parts = macNames.map(([name, size]) => {
    const png = pictures.find((picture) => picture.size === size)?.png
    if (!png) throw new RangeError(`a picture of ${size} points was expected`)
    const head = Buffer.alloc(8)
    head.write(name, 'latin1')
    head.writeUInt32BE(8 + png.length, 4)
    return Buffer.concat([head, png])
  })
  const head = Buffer.alloc(8)
  head.write('icns', 'latin1')
  head.writeUInt32BE(8 + parts.reduce((sum, { length }) => sum + length, 0), 4)
  return Buffer.concat([head, ...parts])
}

/** Makes every icon of the program from its one drawing, build/icons/icon.svg. Run by hand when the drawing changes. */
const makeIcons = async (): Promise<void> => {
  const sizes = [...new Set([...windowsSizes, ...macNames.map(([, size]) => size)])]
  const pictures = await paint(sizes)
  const named = (name: string): string => inProject(`build/icons/${name}`)
  writeFileSync(named('icon.ico'), windowsIcon(pictures.filter(({ size }) => windowsSizes.includes(size))))
  writeFileSync(named('icon.icns'), macIcon(pictures))
  const largest = pictures.find(({ size }) => size === 1024)
  if (largest) writeFileSync(named('icon.png'), largest.png)
}

if (import.meta.main) await makeIcons()
