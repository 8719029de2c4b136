import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { seeded } from '../../build/bench/seeded.ts'
import { hosted, type Hosted } from '../../build/hosted.ts'
import { everyState } from '../../build/pictures/everyState.ts'
import { stand } from '../../build/pictures/stand.ts'
import type { State } from '../../build/pictures/state.ts'
import { sweep } from './sweepPage.ts'
import { startChromium } from '../../build/chromium.ts'

const soak = process.env['BRACEWORK_SOAK'] === '1'

/** States whose opening takes little, from which a few are drawn; a soak sweeps every one there is. */
const quickToOpen = ['jobs', 'jobs-new', 'gate', 'customer', 'prices', 'timber-rack', 'workshop', 'papers']
const draws = seeded(20_260_531)
const drawn = quickToOpen
  .map((name) => ({ name, at: draws.between(0, 1_000_000) }))
  .sort((a, b) => a.at - b.at)
  .slice(0, 2)
  .map(({ name }) => name)
const states = everyState.filter(({ name }) => soak || drawn.includes(name))

describe('the look of every screen', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-sweep-'))
  const held: { browser?: Browser; sample?: Hosted; empty?: Hosted } = {}
  beforeAll(async () => {
    held.sample = await hosted(join(folder, 'sample.book'))
    if (soak) held.empty = await hosted(join(folder, 'empty.book'), { empty: true })
    held.browser = await startChromium()
  })
  afterAll(async () => {
    await held.browser?.close()
    await Promise.all([held.sample?.stop(), held.empty?.stop()])
    rmSync(folder, { recursive: true, force: true })
  })

  const swept = async (state: State): Promise<string[]> => {
    const context = await held.browser?.newContext({
      viewport: { width: 1093, height: 614 },
      reducedMotion: 'reduce',
    })
    if (!context) throw new Error('there is no browser')
    const page = await context.newPage()
    await stand(page, state, { sample: held.sample?.address ?? '', empty: held.empty?.address ?? '' })
    const faults = await sweep(page, { quick: !soak })
    await context.close()
    return faults
  }

  for (const state of states)
    it(`${state.name}: nothing for a reader of screens to stumble over, no weak figure, nothing off the edge, cut off or too small to press`, async () => {
      expect(await swept(state)).toEqual([])
    })

  it('is drawn from states that there are', () => {
    expect(states.length).toBe(soak ? everyState.length : drawn.length)
  })
})
