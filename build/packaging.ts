import type { Configuration } from 'electron-builder'
import { inProject } from './paths.ts'

/**
 * What goes into the packed program: what was built, and the store's runtime files. The store's C sources, its binding
 * for other machines and its build-time dependency stay out; its compiled part lies beside the archive, since no
 * system can load a library from inside one. npmRebuild is off: a rebuilt store would win over the shipped binary.
 */
const files = [
  'package.json',
  'build/out/main/**',
  'build/out/renderer/**',
  'build/out/fonts/**',
  'build/out/migrations/**',
  'build/out/gateSpec.schema.json',
  '!node_modules/**',
  'node_modules/better-sqlite3/package.json',
  'node_modules/better-sqlite3/LICENSE',
  'node_modules/better-sqlite3/lib/**',
  'node_modules/better-sqlite3/prebuilds/${platform}-${arch}.node',
]

/** Electron's own switches, set in the packed program so that it can't be run as a bare Node or from loose files. */
const fuses: Configuration['electronFuses'] = {
  runAsNode: false,
  enableCookieEncryption: true,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  enableEmbeddedAsarIntegrityValidation: true,
  onlyLoadAppFromAsar: true,
  loadBrowserProcessSpecificV8Snapshot: false,
  grantFileProtocolExtraPrivileges: false,
}

/** How the program is packed for Windows, Mac and Linux. */
export const packaging: Configuration = {
  appId: 'org.bracework.bracework',
  productName: 'Bracework',
  copyright: 'Licensed under the MIT licence',
  directories: { output: inProject('build/out/packages'), buildResources: inProject('build/icons') },
  files,
  asar: { smartUnpack: false },
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/**'],
  npmRebuild: false,
  nodeGypRebuild: false,
  electronFuses: fuses,
  publish: null,
  win: { target: 'nsis', icon: inProject('build/icons/icon.png') },
  nsis: { oneClick: true, perMachine: false },
  mac: { target: 'dmg', category: 'public.app-category.business', icon: inProject('build/icons/icon.png') },
  linux: { target: 'AppImage', category: 'Office', icon: inProject('build/icons/icon.png') },
}
