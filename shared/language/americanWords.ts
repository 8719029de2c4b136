/**
 * British words of the trade and of writing, and what is said for them in America. Whole words, their case kept. All from memory and common practice:
 * no document stands behind a line. A word is here only where the other would puzzle or mislead; where both are said (gate, brace, hinge,
 * screw, plank) nothing is changed, and where the American word means something else here (rail, lumber's nominal sizes) it is left.
 */
export const americanWords: readonly (readonly [british: string, american: string])[] = [
  // The trade.
  ['timber', 'lumber'],
  ['timbers', 'lumber'],
  ['ledge', 'batten'],
  ['ledges', 'battens'],
  ['ledged', 'battened'],
  ['offcut', 'cutoff'],
  ['offcuts', 'cutoffs'],
  ['planed', 'surfaced'],
  ['sawn', 'rough-sawn'],
  ['coach bolt', 'carriage bolt'],
  ['coach bolts', 'carriage bolts'],
  ['coach screw', 'lag screw'],
  ['coach screws', 'lag screws'],
  ['spanner', 'wrench'],
  ['spanners', 'wrenches'],
  ['joiner', 'carpenter'],
  ['joiners', 'carpenters'],
  ['joinery', 'carpentry'],
  ['ironmongery', 'hardware'],
  ['ironmonger', 'hardware dealer'],
  ['tee hinge', 'T-hinge'],
  ['tee hinges', 'T-hinges'],
  ['hook and band', 'strap hinge and pintle'],
  ['hooks and bands', 'strap hinges and pintles'],
  ['timber merchant', 'lumber yard'],
  ['merchant', 'dealer'],
  ['merchants', 'dealers'],
  ['sett out', 'laid out'],
  ['setting out', 'layout'],
  ['cramp', 'clamp'],
  ['cramps', 'clamps'],
  ['cramped', 'clamped'],
  ['skip', 'dumpster'],
  ['tin', 'can'],
  ['tins', 'cans'],
  // Money and post.
  ['quotation', 'quote'],
  ['quotations', 'quotes'],
  ['postcode', 'ZIP code'],
  ['post code', 'ZIP code'],
  ['cheque', 'check'],
  ['cheques', 'checks'],
  ['VAT', 'sales tax'],
  ['pence', 'cents'],
  ['mobile', 'cell phone'],
  ['diary', 'calendar'],
  // Spelling.
  ['aluminium', 'aluminum'],
  ['colour', 'color'],
  ['colours', 'colors'],
  ['coloured', 'colored'],
  ['grey', 'gray'],
  ['metre', 'meter'],
  ['metres', 'meters'],
  ['millimetre', 'millimeter'],
  ['millimetres', 'millimeters'],
  ['litre', 'liter'],
  ['litres', 'liters'],
  ['centre', 'center'],
  ['centres', 'centers'],
  ['centred', 'centered'],
  ['mould', 'mold'],
  ['moulding', 'molding'],
  ['plough', 'plow'],
  ['tyre', 'tire'],
  ['odour', 'odor'],
  ['labour', 'labor'],
  ['neighbour', 'neighbor'],
  ['neighbours', 'neighbors'],
  ['licence', 'license'],
  ['licensed', 'licensed'],
  ['defence', 'defense'],
  ['catalogue', 'catalog'],
  ['programme', 'program'],
  ['labelled', 'labeled'],
  ['levelled', 'leveled'],
  ['bevelled', 'beveled'],
  ['bevelling', 'beveling'],
  ['travelled', 'traveled'],
  ['cancelled', 'canceled'],
  ['jewellery', 'jewelry'],
  ['galvanised', 'galvanized'],
  ['recognise', 'recognize'],
  ['recognised', 'recognized'],
  ['organise', 'organize'],
  ['minimise', 'minimize'],
  ['storey', 'story'],
  ['kerb', 'curb'],
  ['draught', 'draft'],
  ['draughts', 'drafts'],
  ['towards', 'toward'],
  ['upwards', 'upward'],
  ['downwards', 'downward'],
  ['inwards', 'inward'],
  ['outwards', 'outward'],
]

const table = new Map(americanWords)

/** Longest first, so that 'coach bolt' is found before any word in it. */
const anyWord = new RegExp(
  `(?<![\\p{L}\\p{N}’'-])(?:${[...table.keys()].sort((a, b) => b.length - a.length).join('|')})(?![\\p{L}\\p{N}])`,
  'giu',
)

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** A word in the case of another: all capitals, a capital first, or as it stands. */
function inCaseOf(model: string, word: string): string {
  if (model.length > 1 && model === model.toUpperCase() && model !== model.toLowerCase() && !table.has(model))
    return word.toUpperCase()
  const first = model.charAt(0)
  return first !== first.toLowerCase() && !table.has(model) ? capital(word) : word
}

/** One of our own messages in American words: 'Ledges and timber' is 'Battens and lumber'. Never for what a person wrote. */
export const inAmerican = (message: string): string =>
  message.replace(anyWord, (found) => {
    const american = table.get(found) ?? table.get(found.toLowerCase())
    return american === undefined ? found : inCaseOf(found, american)
  })
