import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { macNames, windowsSizes } from '../../build/icons.ts'
import { inProject } from '../../build/paths.ts'

const icon = (name: string): Buffer => readFileSync(inProject(`build/icons/${name}`))

/** Width and height of a PNG, which stand in its first part; and whether it has the PNG's mark at all. */
const sizeOf = (png: Buffer): [isPng: boolean, width: number, height: number] => [
  png.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])),
  png.readUInt32BE(16),
  png.readUInt32BE(20),
]

test('the icon for Windows holds each of its sizes as a picture of that size', () => {
  const ico = icon('icon.ico')
  expect([ico.readUInt16LE(0), ico.readUInt16LE(2), ico.readUInt16LE(4)]).toEqual([0, 1, windowsSizes.length])
  let end = 6 + 16 * windowsSizes.length
  for (const [index, size] of windowsSizes.entries()) {
    const entry = 6 + 16 * index
    const [length, from] = [ico.readUInt32LE(entry + 8), ico.readUInt32LE(entry + 12)]
    expect([ico.readUInt8(entry), from]).toEqual([size % 256, end])
    expect(sizeOf(ico.subarray(from, from + length))).toEqual([true, size, size])
    end = from + length
  }
  expect(end).toBe(ico.length)
})

test('the icon for a Mac holds each of its names as a picture of that size', () => {
  const icns = icon('icon.icns')
  expect([icns.toString('latin1', 0, 4), icns.readUInt32BE(4)]).toEqual(['icns', icns.length])
  let at = 8
  for (const [name, size] of macNames) {
    expect(icns.toString('latin1', at, at + 4)).toBe(name)
    const length = icns.readUInt32BE(at + 4)
    expect(sizeOf(icns.subarray(at + 8, at + length))).toEqual([true, size, size])
    at += length
  }
  expect(at).toBe(icns.length)
})

test('the icon elsewhere is one large picture', () => {
  expect(sizeOf(icon('icon.png'))).toEqual([true, 1024, 1024])
})
