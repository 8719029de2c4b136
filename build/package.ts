import { build, Platform } from 'electron-builder'
import { bundleIfStale } from './bundle.ts'
import { packagingFor, type PackedPlatform } from './packaging.ts'
import { projectRoot } from './paths.ts'

/** The kinds of machine the program is packed for. */
const platforms = { linux: Platform.LINUX, mac: Platform.MAC, win: Platform.WINDOWS }

const nodeNames = { linux: 'linux', mac: 'darwin', win: 'win32' } satisfies Record<
  keyof typeof platforms,
  PackedPlatform
>

const isPlatform = (name: string): name is keyof typeof platforms => Object.hasOwn(platforms, name)

const thisMachine = (): string => ({ win32: 'win', darwin: 'mac' })[process.platform as string] ?? 'linux'

/** `npm run package [-- linux|mac|win ...] [--dir]`: builds, then packs for this machine or the ones named. */
const packProgram = async (args: string[]): Promise<void> => {
  const named = args.filter((arg) => arg !== '--dir')
  const wanted = (named.length > 0 ? named : [thisMachine()]).filter(isPlatform)
  if (wanted.length < named.length) throw new Error('package takes linux, mac, win and --dir')
  await bundleIfStale()
  for (const name of wanted) {
    const targets = platforms[name].createTarget(args.includes('--dir') ? 'dir' : undefined)
    const config = packagingFor(nodeNames[name])
    const made = await build({ projectDir: projectRoot, targets, config, publish: 'never' })
    process.stdout.write(`${made.join('\n')}\n`)
  }
}

await packProgram(process.argv.slice(2))
