import { chmodSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** The bytes by which Electron's switches are found in its program: the mark, a version, how many, then one a switch. */
const fuseWire = Buffer.concat([
  Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1'),
  Buffer.from([1, 9]),
  Buffer.from('010001001', 'latin1'),
])

const dataFiles = [
  'chrome_100_percent.pak',
  'chrome_200_percent.pak',
  'resources.pak',
  'icudtl.dat',
  'snapshot_blob.bin',
  'v8_context_snapshot.bin',
  'LICENSE',
  'LICENSES.chromium.html',
]

/**
 * Lays out a folder that looks to the packer like an unpacked Electron for Linux, and does nothing when run: enough to
 * see what lands in the archive where Electron itself can't be fetched.
 */
export const layOutElectron = (folder: string, version: string): void => {
  mkdirSync(join(folder, 'locales'), { recursive: true })
  mkdirSync(join(folder, 'resources'))
  for (const name of dataFiles) writeFileSync(join(folder, name), '')
  for (const name of ['en-US.pak', 'en-GB.pak']) writeFileSync(join(folder, 'locales', name), '')
  writeFileSync(join(folder, 'version'), version)
  for (const name of ['electron', 'chrome-sandbox', 'chrome_crashpad_handler']) {
    writeFileSync(join(folder, name), Buffer.concat([Buffer.from('#!/bin/false\n'), fuseWire]))
    chmodSync(join(folder, name), 0o755)
  }
}
