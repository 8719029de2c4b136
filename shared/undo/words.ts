/** What the entries of a job are called where a deed names one, by their path inside the gate or their column. */
const entries: Record<string, string> = {
  title: 'What it is',
  stage: 'Stage',
  due: 'Promised',
  notes: 'Notes',
  unit: 'Unit',
  'size.width': 'Width',
  'size.height': 'Height',
  'size.widths.0': 'Opening width at the top',
  'size.widths.1': 'Opening width in the middle',
  'size.widths.2': 'Opening width at the foot',
  'size.heights.0': 'Opening height, hanging side',
  'size.heights.1': 'Opening height, closing side',
  'size.meetingGap': 'Gap between the leaves',
  'size.hangingGap': 'Hanging gap',
  'size.closingGap': 'Closing gap',
  'size.groundGap': 'Gap to the ground',
  'size.headGap': 'Gap at the head',
  'size.from': 'Leaf or opening',
  hung: 'Hung',
  opens: 'Opens',
  openTo: 'Opens to',
  construction: 'Construction',
  leaves: 'Leaves',
  'boards.section': 'Boards',
  'boards.gap': 'Gap between boards',
  'boards.rip': 'Ripped board',
  'boards.tongues': 'Tongues',
  'boards.endTrim': 'End trim',
  'ledges.section': 'Ledges',
  'ledges.topSection': 'Top ledge',
  'ledges.count': 'How many ledges',
  'ledges.heights': 'Ledge heights',
  'ledges.hangingInset': 'Ledge inset, hanging side',
  'ledges.closingInset': 'Ledge inset, closing side',
  'ledges.end': 'Ledge ends',
  'ledges.weather': 'Ledge weathering',
  'braces.section': 'Brace',
  'braces.footSetback': 'Setback at the foot of the brace',
  'braces.headSetback': 'Setback at the head of the brace',
  'braces.run': 'How the braces run',
  'braces.ends': 'Brace ends',
  'braces.notchDepth': 'Notch depth',
  'top.shape': 'Top',
  'top.rise': 'Rise of the top',
  'top.high': 'High side of the top',
  'fixings.kind': 'Screws or nails',
  'fixings.diameter': 'Screw size',
  'fixings.lengths': 'Lengths in stock',
}

const groups: Record<string, string> = {
  size: 'Sizes',
  boards: 'Boards',
  ledges: 'Ledges',
  braces: 'Brace',
  fixings: 'Fixings',
  top: 'Top',
  foot: 'Foot',
  meeting: 'Meeting edge',
  stable: 'Stable door',
  survey: 'Survey of the opening',
  frame: 'Frame',
  climate: 'Weather',
  timbers: 'Timber',
  site: 'Site',
  ironmongery: 'Ironmongery',
  workshop: 'Tools',
}

/** What an entry of a job is called, by its path ('size.width', 'braces.section.width', 'notes'): its own name, the name of what it is part of, or its group's. */
export function entryName(path: string): string {
  const keys = path.split('.')
  for (let length = keys.length; length > 0; length -= 1) {
    const name = entries[keys.slice(0, length).join('.')]
    if (name !== undefined) return name
  }
  return groups[keys[0] ?? ''] ?? 'Gate'
}

const settingNames: Record<string, string> = {
  welcomed: 'first questions answered',
  name: 'name of the workshop',
  unit: 'unit',
  paper: 'paper',
  workshop: 'tools',
  money: 'money',
  times: 'standard times',
  business: 'business',
  cutting: 'cutting up lengths',
  printer: 'printer',
}

/** What a setting of the workshop is called in the middle of a sentence. */
export const settingName = (key: string): string => settingNames[key] ?? 'the workshop'

const settingCells: Record<string, string> = {
  kerf: 'kerf',
  tooth: 'tooth',
  guideLeft: 'guide, left',
  guideRight: 'guide, right',
  clearance: 'clearance',
  endTrim: 'end trim',
  leastOffcut: 'least offcut',
  phone: 'telephone',
  email: 'email',
  address: 'address',
  website: 'website',
  terms: 'terms',
}

/** What one value inside a setting is called; undefined where its setting's name must do. 'workshop', 'value.saws.0.kerf' is kerf. */
export const settingCell = (path: string): string | undefined => settingCells[path.split('.').at(-1) ?? '']

const customerCells: Record<string, string> = {
  name: 'Customer’s name',
  address: 'Address',
  town: 'Town',
  phone: 'Telephone',
  email: 'Email',
}
export const customerCell = (cell: string): string => customerCells[cell] ?? 'Customer'
