import * as v from 'valibot'
import type { Settings } from '../shared/contract.ts'
import { fieldTexts } from '../shared/job/fieldTexts.ts'
import { workshopShape } from '../shared/gate/spec.ts'
import { standardWorkshop } from '../shared/gate/standardSpec.ts'
import { cuttingShape, standardCutting } from '../shared/ordering/cuttingSettings.ts'
import { printerShape, truePrinter } from '../shared/papers/fullSize/printer.ts'
import { businessShape, moneyShape, timesShape, type Business } from '../shared/pricing/shapes.ts'
import { standardMoney } from '../shared/pricing/standardMoney.ts'
import { standardTimes } from '../shared/pricing/standardTimes.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

export type SettingsRoom = {
  read: () => Settings
  change: (settings: Partial<Settings>) => Settings
}

/** A workshop that has said nothing of itself yet. */
const noBusiness: Business = {
  address: '',
  phone: '',
  email: '',
  website: '',
  terms: '',
  included: '',
  notIncluded: '',
  logo: null,
}

/** What holds until the workshop has said its own. */
export const standardSettings: Settings = {
  name: '',
  unit: 'mm',
  paper: 'a4',
  language: '',
  workshop: standardWorkshop,
  money: standardMoney,
  times: standardTimes,
  business: noBusiness,
  cutting: standardCutting,
  printer: truePrinter,
  welcomed: false,
}

/** What each setting may be. */
export const settingShapes = {
  name: fieldTexts.short,
  unit: fieldTexts.unit,
  paper: v.picklist(['a4', 'letter']),
  language: fieldTexts.short,
  workshop: workshopShape,
  money: moneyShape,
  times: timesShape,
  business: businessShape,
  cutting: cuttingShape,
  printer: printerShape,
  welcomed: v.boolean(),
}

const keys = [
  'name',
  'unit',
  'paper',
  'language',
  'workshop',
  'money',
  'times',
  'business',
  'cutting',
  'printer',
  'welcomed',
] as const

const stored = v.partial(v.object(settingShapes))

/** The workshop's settings in the book: what was set, and the standard for the rest. */
export function settingsRoom({ db, read, write }: Connection): SettingsRoom {
  const all = db.prepare<[], { key: string; value: string }>('SELECT key, value FROM settings')
  const put = db.prepare(
    'INSERT INTO settings (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value',
  )

  const readAll = (): Settings => {
    const rows = read(() => all.all()).map(({ key, value }): [string, unknown] => [key, JSON.parse(value)])
    const found = v.safeParse(stored, Object.fromEntries(rows))
    if (!found.success)
      throw new BookProblem(
        'damaged',
        'The workshop’s settings can’t be read: the job book is damaged there. Bring back a copy of the book.',
      )
    return { ...standardSettings, ...found.output }
  }

  return {
    read: readAll,
    change: (settings) =>
      write(() => {
        for (const key of keys) if (settings[key] !== undefined) put.run(key, JSON.stringify(settings[key]))
        return readAll()
      }),
  }
}
