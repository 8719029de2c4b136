import { stacked, type Block } from '../flow.ts'
import type { JobCardInput } from '../jobCardInput.ts'
import { heading } from '../table.ts'
import { writeLine } from '../writeLine.ts'

/** Where the gaps are put down as they came out, and the gate is signed for. In one piece. */
export function handedOver({ spec }: Pick<JobCardInput, 'spec'>, width: number): Block {
  const closing = spec.leaves === 2 ? 'gap where they meet' : 'gap, closing side'
  return {
    ...stacked([
      { ...heading('As it was hung'), above: 0 },
      writeLine(
        [
          { label: 'gap, hanging side', share: 0.25 },
          { label: closing, share: 0.25 },
          { label: 'gap over the ground', share: 0.25 },
          { label: 'opens to, degrees', share: 0.25 },
        ],
        width,
      ),
      writeLine(
        [
          { label: 'Hung and tried by', share: 0.36 },
          { label: 'Seen and taken over by', share: 0.36 },
          { label: 'Date', share: 0.28 },
        ],
        width,
      ),
    ]),
    above: 4.3,
  }
}
