import { readFileSync } from 'node:fs'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { inProject } from '../paths.ts'
import { aim, frameMs, share, told } from './designKeystroke.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { inPage } from './inPage.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'

/** The heaviest gate there is: a framed pair, bowed, three ledges, notched braces, every check. */
function heaviest(): GateSpec {
  const path = inProject('tests/fixtures/whole/24-framed-pair-bowed-heaviest.json')
  const read = parseSpec(JSON.parse(readFileSync(path, 'utf8')))
  if (!read.ok) throw new Error(`${path} is no spec`)
  return read.value
}

/** The heaviest gate worked out anew at every key in the browser, as a share of a frame; beside it the plain gate in the same run. */
export async function designHeaviest({ quick }: Effort): Promise<Measured> {
  const count = quick ? 12 : 2000
  const [plain] = exampleSpecs()
  if (!plain) throw new Error('there is a plain example')
  const heavy = [{ spec: heaviest(), unit: 'mm' as const }]
  const whole = await inPage({ gates: heavy, count, work: 'design' })
  const small = await inPage({ gates: [{ spec: plain, unit: 'mm' }], count, work: 'design' })
  const drawn = await inPage({ gates: heavy, count, work: 'screen' })
  const p99 = quantile(whole.times, 0.99)
  const ratio = p99 / frameMs
  return {
    row: {
      name: 'design-heaviest',
      value: p99,
      unit: 'ms',
      against: 'one 16.7 ms frame, same Chromium',
      ratio,
      aim,
      holds: ratio < aim,
    },
    said: [
      `${written(median(whole.times) / median(small.times))} times the plain gate (medians), ${written(p99 / quantile(small.times, 0.99))} times at p99`,
      told('heaviest, worked out', whole),
      told('plain, worked out', small),
      `with its three views drawn and laid out: median ${share(median(drawn.times))}, p99 ${share(quantile(drawn.times, 0.99))}`,
    ],
  }
}
