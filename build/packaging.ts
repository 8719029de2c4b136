import type { Configuration } from 'electron-builder'
import { jobFileEnding } from '../shared/jobFileEnding.ts'
import { inProject } from './paths.ts'

/** The kinds of machine the program is packed for, by Node's names. */
export type PackedPlatform = 'win32' | 'darwin' | 'linux'

/**
 * What goes into the packed program: what was built, and the store's runtime files. The store's C sources, its binding
 * for other machines and its build-time dependency stay out; its compiled part lies beside the archive, since no
 * system can load a library from inside one. npmRebuild is off: a rebuilt store would win over the shipped binary.
 */
const filesFor = (platform: PackedPlatform): string[] => [
  'package.json',
  'build/out/main/**',
  'build/out/renderer/**',
  'build/out/fonts/**',
  'build/out/migrations/**',
  'build/out/languages/**',
  'build/out/gateSpec.schema.json',
  'build/out/notices.txt',
  '!node_modules/**',
  'node_modules/better-sqlite3/package.json',
  'node_modules/better-sqlite3/LICENSE',
  'node_modules/better-sqlite3/lib/**',
  // The packer's own word for a platform means the machine that packs, not the one that is packed for.
  `node_modules/better-sqlite3/prebuilds/${platform}-\${arch}.node`,
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

/** A press on a job's file opens the program, which shows what it holds and does no more by itself. */
const jobFile = {
  ext: jobFileEnding,
  name: 'Job of a workshop',
  description: 'One job to carry to another job book',
  mimeType: 'application/x-gate-job',
  role: 'Editor',
}

/**
 * How the program is packed for one kind of machine; a fresh copy each time, since the packer writes into what it is given.
 * Taking the program off a machine never takes the job book with it.
 */
export const packagingFor = (platform: PackedPlatform): Configuration => ({
  appId: 'org.bracework.bracework',
  productName: 'Bracework',
  copyright: 'Licensed under the MIT licence',
  directories: { output: inProject('build/out/packages'), buildResources: inProject('build/icons') },
  files: filesFor(platform),
  asar: { smartUnpack: false },
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/**'],
  npmRebuild: false,
  nodeGypRebuild: false,
  electronFuses: { ...fuses },
  fileAssociations: [{ ...jobFile }],
  publish: null,
  win: { target: 'nsis', icon: inProject('build/icons/icon.ico') },
  nsis: { oneClick: true, perMachine: false, deleteAppDataOnUninstall: false },
  mac: {
    target: 'dmg',
    category: 'public.app-category.business',
    icon: inProject('build/icons/icon.icns'),
  },
  linux: {
    target: 'AppImage',
    category: 'Office',
    icon: inProject('build/icons/icon.png'),
  },
})
