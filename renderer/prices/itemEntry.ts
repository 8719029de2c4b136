import type { Takes } from '../../shared/contract.ts'
import type { ItemKind, PriceItem } from '../../shared/pricing/item.ts'

/** An item while it is entered, as the book takes it. */
export type ItemEntry = Takes<'prices.addItem'>

/** A new item of a kind, with the sizes that are commonest for it: starting values, all to be typed over. */
export function emptyItem(kind: ItemKind): ItemEntry {
  const name = ''
  switch (kind) {
    case 'timber':
      return {
        kind,
        name,
        facts: {
          use: 'boards',
          species: 'European redwood',
          exThickness: 25,
          exWidth: 125,
          thickness: 20,
          width: 112,
          tongue: 7,
          groove: 8,
          treated: false,
        },
      }
    case 'ironmongery':
      return { kind, name, facts: { piece: null } }
    case 'fixing':
      return { kind, name, facts: { form: 'screw', diameter: 5, length: 50 } }
    case 'finish':
      return { kind, name, facts: { coverage: 10, coats: 2 } }
    case 'work':
      return { kind, name, facts: { rate: 'hour' } }
  }
}

/** An item of the book, to be changed. */
export const entryOf = ({ id: _, retired: _retired, sample: _sample, ...entry }: PriceItem): ItemEntry =>
  entry
