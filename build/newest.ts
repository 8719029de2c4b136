import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { inProject, outFolder } from './paths.ts'

/** Time of the newest file at or under a path, in milliseconds since 1970; 0 where there is none. */
export const newestUnder = (path: string): number => {
  if (!existsSync(path)) return 0
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestUnder(join(path, name))), 0)
}

/** What the bundle is made from: a change to any of these makes it stale. */
export const bundleSources = [
  'shared',
  'db',
  'electron',
  'renderer',
  'build/bundle.ts',
  'build/bundleMain.ts',
  'build/copyAssets.ts',
  'build/language',
  'build/notices.ts',
  'build/publishSchema.ts',
  'build/vite.config.ts',
  'package-lock.json',
]

/** The file that says a bundle was finished, and when. */
export const bundleStamp = join(outFolder, 'bundle.stamp')

/**
 * Whether the bundle must be built again: it is missing, was broken off, or something it is made from is newer.
 * Times are handed in so that the rule can be tried without touching files.
 */
export const bundleIsStale = (
  stampTime = newestUnder(bundleStamp),
  sourceTime = Math.max(...bundleSources.map((path) => newestUnder(inProject(path)))),
): boolean => stampTime === 0 || sourceTime >= stampTime
