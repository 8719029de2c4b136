/** What each entry of a gate is called in its job's log, by its path; one that has no name here goes by its group's. */
const names: Record<string, string> = {
  construction: 'Construction',
  leaves: 'Leaves',
  hung: 'Hung, seen from the face',
  opens: 'Opens',
  openTo: 'Opens to',
  size: 'Sizes',
  'size.from': 'Sizes taken from',
  'size.width': 'Width',
  'size.height': 'Height',
  'size.widths.0': 'Width of the opening at the top',
  'size.widths.1': 'Width of the opening in the middle',
  'size.widths.2': 'Width of the opening at the foot',
  'size.heights.0': 'Height of the opening at the hanging side',
  'size.heights.1': 'Height of the opening at the closing side',
  'size.hangingGap': 'Hanging gap',
  'size.closingGap': 'Closing gap',
  'size.meetingGap': 'Gap between the leaves',
  'size.groundGap': 'Gap over the ground',
  'size.headGap': 'Gap under the head',
  survey: 'Survey of the opening',
  top: 'Top',
  'top.shape': 'Top',
  'top.rise': 'Rise of the top',
  'top.high': 'High side of the top',
  foot: 'Foot',
  stable: 'Stable door',
  'stable.lowerHeight': 'Height of the lower half',
  'stable.gap': 'Gap between the halves',
  meeting: 'Meeting edge',
  'meeting.edge': 'Meeting edge',
  'meeting.lap': 'Lap of the meeting edge',
  boards: 'Boards',
  'boards.section': 'Boards',
  'boards.rip': 'Boards ripped at',
  'boards.tongues': 'Tongues point',
  'boards.gap': 'Gap between boards',
  'boards.endTrim': 'Trim at board ends',
  ledges: 'Ledges',
  'ledges.section': 'Ledges',
  'ledges.topSection': 'Top ledge',
  'ledges.count': 'How many ledges',
  'ledges.hangingInset': 'Ledge inset, hanging side',
  'ledges.closingInset': 'Ledge inset, closing side',
  'ledges.end': 'Ledge ends',
  'ledges.end.cut': 'Ledge ends',
  'ledges.end.angle': 'Angle of the ledge ends',
  'ledges.heights': 'Ledge heights',
  'ledges.weather': 'Weathering of the ledges',
  braces: 'Brace',
  'braces.section': 'Brace',
  'braces.footSetback': 'Setback at the brace’s foot',
  'braces.headSetback': 'Setback at the brace’s head',
  'braces.run': 'Braces run',
  'braces.ends': 'Brace ends',
  'braces.notchDepth': 'Depth of the notch',
  frame: 'Frame',
  'frame.stile': 'Stiles',
  'frame.topRail': 'Top rail',
  'frame.tenon': 'Tenons',
  'frame.horn': 'Horns',
  'frame.rebate': 'Rebate for the boards',
  fixings: 'Fixings',
  'fixings.kind': 'Screws or nails',
  'fixings.diameter': 'Thickness of the fixings',
  'fixings.root': 'Root of the screws',
  'fixings.lengths': 'Fixings in stock',
  ironmongery: 'Ironmongery',
  timbers: 'Timber’s own figures',
  climate: 'Weather',
  site: 'Site',
  workshop: 'Saws and drills',
}

/** The nearest name above a path, and whether it is the entry's own: 'braces.section.width' is the brace's. */
export function entryName(path: string): { name: string; own: boolean } {
  const steps = path.split('.')
  for (let most = steps.length; most > 0; most -= 1) {
    const name = names[steps.slice(0, most).join('.')]
    if (name) return { name, own: most === steps.length }
  }
  return { name: 'An entry of the gate', own: false }
}

/** Words that stand in a spec, as they are said. */
const said: Record<string, string> = {
  'ledged-braced': 'ledged and braced',
  'framed-ledged-braced': 'framed, ledged and braced',
  'to-back': 'to the back',
  'to-face': 'to the face',
  'to-closing': 'to the closing edge',
  'to-hanging': 'to the hanging edge',
  hanging: 'the hanging edge',
  closing: 'the closing edge',
  both: 'both edges',
  left: 'on the left',
  right: 'on the right',
  'each-bay': 'one in each bay',
  'follows-ground': 'follows the ground',
  leaf: 'the leaf',
  opening: 'the opening',
  screw: 'screws',
  nail: 'nails',
}

/** A word of a spec as it is said: 'in-line' is in line. auto depends on the entry: from the weather for a gap, else as usual. */
export function specWord(path: string, word: string): string {
  if (word === 'auto') return path === 'boards.gap' ? 'from the weather' : 'as usual'
  return said[word] ?? word.replaceAll('-', ' ')
}

const angles = new Set(['openTo', 'ledges.end.angle', 'ledges.weather'])
const counts = new Set(['leaves', 'ledges.count'])

/** What a number at a path of the spec measures. */
export const measureAt = (path: string): 'length' | 'angle' | 'count' =>
  angles.has(path) ? 'angle' : counts.has(path) ? 'count' : 'length'
