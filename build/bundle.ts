import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'
import { bundleKeepingWorker, bundleMain, bundlePreload } from './bundleMain.ts'
import { copyFonts, copyLanguages, copyMigrations } from './copyAssets.ts'
import { writeCatalogue } from './language/extract.ts'
import { bundleIsStale, bundleStamp } from './newest.ts'
import { writeNotices } from './notices.ts'
import { inProject, outFolder } from './paths.ts'
import { publishSchema } from './publishSchema.ts'

/**
 * Builds the whole program into build/out: renderer, main, preload, fonts, migrations, the messages and other languages, the schema of a gate's file and others' licences.
 * The stamp is written last, so a build that broke off is never taken for a good one.
 */
export const bundle = async (): Promise<void> => {
  mkdirSync(outFolder, { recursive: true })
  writeCatalogue()
  rmSync(bundleStamp, { force: true })
  rmSync(join(outFolder, 'main'), { recursive: true, force: true })
  await build({ configFile: inProject('build/vite.config.ts'), logLevel: 'warn' })
  await bundleMain()
  await bundleKeepingWorker()
  await bundlePreload()
  copyFonts()
  copyMigrations()
  copyLanguages()
  publishSchema()
  writeNotices()
  writeFileSync(bundleStamp, '')
}

/** Builds only when something is missing or older than what it is made from. Gives whether it built. */
export const bundleIfStale = async (): Promise<boolean> => {
  if (!bundleIsStale()) return false
  await bundle()
  return true
}

if (import.meta.main) {
  const built = process.argv.includes('--force') ? await bundle().then(() => true) : await bundleIfStale()
  process.stdout.write(built ? 'Built into build/out.\n' : 'build/out is up to date.\n')
}
