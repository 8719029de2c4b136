import type { FigureEntry } from './figureEntries.ts'

/** What the worked figures belong to, in the order a gate is worked out; the first whose kinds begin so takes a figure. */
const groups: { title: string; kinds: string[] }[] = [
  { title: 'Weight', kinds: ['weight', 'leaf.mass', 'leaf.centre', 'leaf.area'] },
  {
    title: 'Hinges, wind and braces under load',
    kinds: [
      'hinges',
      'hinge.',
      'leaf.wind',
      'brace.load',
      'brace.thrust',
      'brace.alongLedge',
      'brace.toe',
      'brace.hold',
      'hole.hold',
    ],
  },
  { title: 'Opening and leaf', kinds: ['opening', 'leaf', 'whole', 'meeting'] },
  { title: 'Top', kinds: ['top'] },
  { title: 'Frame', kinds: ['frame'] },
  { title: 'Boards', kinds: ['boards', 'board'] },
  { title: 'Ledges', kinds: ['ledges', 'ledge'] },
  { title: 'Braces', kinds: ['brace'] },
  { title: 'Fixings and their places', kinds: ['fixings', 'fixing'] },
  { title: 'Holes', kinds: ['hole'] },
  { title: 'Saw settings', kinds: ['saw'] },
  { title: 'Cut list', kinds: ['cut'] },
  { title: 'Movement', kinds: ['movement'] },
  { title: 'Swing', kinds: ['swing'] },
  { title: 'Ironmongery', kinds: ['fitting'] },
]

const printed = [
  'Opening and leaf',
  'Top',
  'Frame',
  'Boards',
  'Ledges',
  'Braces',
  'Fixings and their places',
  'Holes',
  'Saw settings',
  'Cut list',
  'Weight',
  'Hinges, wind and braces under load',
  'Movement',
  'Swing',
  'Ironmongery',
]

const titleOf = ({ kind }: FigureEntry): string =>
  groups.find(({ kinds }) => kinds.some((start) => kind.startsWith(start)))?.title ?? 'Further figures'

/** Entries under the heading of what they belong to, headings in the order they are printed. Empty ones are left out. */
export const figureGroups = (entries: FigureEntry[]): { title: string; entries: FigureEntry[] }[] =>
  [...printed, 'Further figures']
    .map((title) => ({ title, entries: entries.filter((entry) => titleOf(entry) === title) }))
    .filter((group) => group.entries.length > 0)
