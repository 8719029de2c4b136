import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { seeded, type Chance } from './seeded.ts'
import { afterCut, diskBefore, happen, manners, type Manner } from './disk.ts'
import type { Recording } from './recording.ts'

/** One power cut: after which event of the recording, what the program had said by then, how the disk took it, and a folder that holds what was left. */
export type Cut = { after: number; said: string; manner: Manner; folder: string }

const wordsOf = ({ events }: Recording, after: number): string =>
  events
    .slice(0, after)
    .map((event) => (event.kind === 'said' ? event.words : ''))
    .join('')

function layOut(folder: string, files: Map<string, Uint8Array>): void {
  mkdirSync(folder)
  for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes)
}

/** So many places of a recording, in order; its beginning and its end are always among them. */
function places({ events }: Recording, count: number, chance: Chance): number[] {
  const between = Array.from({ length: count - 2 }, () => chance.below(events.length + 1))
  return [0, ...between.sort((one, other) => one - other), events.length]
}

/** Cuts the power so many times over one recording, at seeded places and in every manner in turn; each folder is gone once it has been looked at. */
export async function overCuts(
  recording: Recording,
  { count, seed, within }: { count: number; seed: number; within: string },
  look: (cut: Cut) => Promise<void> | void,
): Promise<void> {
  const chance = seeded(seed)
  const disk = diskBefore(recording)
  let happened = 0
  for (const [turn, after] of places(recording, count, chance).entries()) {
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
