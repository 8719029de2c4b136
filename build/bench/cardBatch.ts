import { makeCard } from '../../electron/makeCard.ts'
import { cardInput } from './cardInput.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { variedSpecs } from './variedSpecs.ts'
import { median, written, type Effort, type Measured } from './row.ts'

/** A batch of a hundred may cost so many times a batch of ten: ten times is a straight line, more would be growth. */
const aim = 11

const seed = 20260504

/** Makes the cards of one batch, one after another as they are printed, and gives the ms it took. */
async function batch(inputs: readonly ReturnType<typeof cardInput>[]): Promise<number> {
  const start = performance.now()
  for (const input of inputs) await makeCard(input)
  return performance.now() - start
}

/** A batch of a hundred cards of different gates beside batches of ten, none of which was made before. */
export async function cardBatch({ quick }: Effort): Promise<Measured> {
  const [many, few, rounds] = quick ? [6, 2, 1] : [100, 10, 5]
  const count = many + few * (rounds + 1)
  const inputs = variedSpecs(exampleSpecs(), count, seed).map(({ spec }) => cardInput(spec))
  await batch(inputs.slice(0, few))
  const tens: number[] = []
  for (let round = 0; round < rounds; round += 1)
    tens.push(await batch(inputs.slice(few * (round + 1), few * (round + 2))))
  const hundred = await batch(inputs.slice(few * (rounds + 1)))
  const ratio = hundred / median(tens)
  return {
    row: {
      name: 'card-batch',
      value: hundred,
      unit: 'ms',
      against: `a batch of ${few} cards: ${written(median(tens))} ms`,
      ratio,
      aim,
      holds: ratio <= aim,
    },
    said: [
      `a batch of ${many} cards is ${written(ratio)} times one of ${few}: ${many / few} times is a straight line`,
    ],
  }
}
