import { chmodSync, mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { PackedPlatform } from '../../build/packaging.ts'

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

const plist = (name: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<plist version="1.0"><dict>
  <key>CFBundleExecutable</key><string>${name}</string>
  <key>CFBundleIdentifier</key><string>com.github.Electron</string>
  <key>CFBundleName</key><string>${name}</string>
</dict></plist>
`

const put = (path: string, content: string | Buffer = ''): void => {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, content)
}

const putProgram = (path: string): void => {
  put(path, Buffer.concat([Buffer.from('#!/bin/false\n'), fuseWire]))
  chmodSync(path, 0o755)
}

/** A Mac's program is a folder: the switches lie in its framework, and its helpers are programs of their own. */
const layOutForMac = (folder: string): void => {
  const contents = join(folder, 'Electron.app', 'Contents')
  put(join(contents, 'Info.plist'), plist('Electron'))
  putProgram(join(contents, 'MacOS', 'Electron'))
  put(join(contents, 'Resources', 'en.lproj', 'locale.pak'))
  putProgram(join(contents, 'Frameworks', 'Electron Framework.framework', 'Electron Framework'))
  for (const kind of ['', ' (Renderer)', ' (Plugin)', ' (GPU)']) {
    const helper = `Electron Helper${kind}`
    const inside = join(contents, 'Frameworks', `${helper}.app`, 'Contents')
    put(join(inside, 'Info.plist'), plist(helper))
    putProgram(join(inside, 'MacOS', helper))
  }
}

/**
 * Lays out a folder that looks to the packer like an unpacked Electron for this kind of machine, and does nothing when run:
 * enough to see what lands in the archive where Electron itself can't be fetched.
 */
export const layOutElectron = (folder: string, version: string, platform: PackedPlatform): void => {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'version'), version)
  if (platform === 'darwin') return layOutForMac(folder)
  for (const name of dataFiles) put(join(folder, name))
  for (const name of ['en-US.pak', 'en-GB.pak']) put(join(folder, 'locales', name))
  mkdirSync(join(folder, 'resources'))
  const programs = {
    linux: ['electron', 'chrome-sandbox', 'chrome_crashpad_handler'],
    win32: ['electron.exe'],
  }
  for (const name of programs[platform]) putProgram(join(folder, name))
}
