import { linkSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { seeded, type Chance } from './seeded.ts'
import { afterCut, diskBefore, happen, manners, type Left, type Manner } from './disk.ts'
import type { DiskEvent, Recording } from './recording.ts'

/** One power cut: after which event of the recording, what the program had said by then, how the disk took it, and a folder that holds what was left. */
export type Cut = { after: number; said: string; manner: Manner; folder: string }

const wordsOf = ({ events }: Recording, after: number): string =>
  events
    .slice(0, after)
    .map((event) => (event.kind === 'said' ? event.words : ''))
    .join('')

/** Lays out what was left; two names of one file are that again. */
function layOut(folder: string, left: Left): void {
  mkdirSync(folder)
  const laid = new Map<Uint8Array, string>()
  for (const [name, bytes] of left) {
    const path = join(folder, name)
    const other = bytes && laid.get(bytes)
    if (!bytes) mkdirSync(path)
    else if (other !== undefined) linkSync(other, path)
    else writeFileSync(path, bytes)
    if (bytes) laid.set(bytes, path)
  }
}

/** Where names change or something is forced: few events among all the writing, and the ones that order hangs on. */
const turning = ({ kind }: DiskEvent): boolean => kind !== 'wrote' && kind !== 'copied' && kind !== 'said'

/** So many places of a recording, in order; its beginning and its end are always among them. turns: half of the rest lie where names change or something is forced. */
function places({ events }: Recording, { count, turns }: Cutting, chance: Chance): number[] {
  const at = turns ? events.flatMap((event, place) => (turning(event) ? [place, place + 1] : [])) : []
  const between = Array.from({ length: count - 2 }, (_, place) =>
    at.length > 0 && place % 2 === 0 ? chance.oneOf(at) : chance.below(events.length + 1),
  )
  return [0, ...between.sort((one, other) => one - other), events.length]
}

/** How often the power is cut, from which seed, where the folders lie meanwhile. */
export type Cutting = { count: number; seed: number; within: string; turns?: true }

/** Cuts the power so many times over one recording, at seeded places and in every manner in turn; each folder is gone once it has been looked at. */
export async function overCuts(
  recording: Recording,
  cutting: Cutting,
  look: (cut: Cut) => Promise<void> | void,
): Promise<void> {
  const { seed, within } = cutting
  const chance = seeded(seed)
  const disk = diskBefore(recording)
  let happened = 0
  for (const [turn, after] of places(recording, cutting, chance).entries()) {
    for (; happened < after; happened += 1) {
      const event = recording.events[happened]
      if (event) happen(disk, event)
    }
    const manner = manners[turn % manners.length] ?? 'all of it lost'
    const folder = join(within, `cut-${turn}`)
    layOut(folder, afterCut(disk, manner, chance))
    await look({ after, said: wordsOf(recording, after), manner, folder })
    rmSync(folder, { recursive: true, force: true })
  }
}
