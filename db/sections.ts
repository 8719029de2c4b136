import type { KeptSection } from '../shared/contract.ts'
import type { Section } from '../shared/gate/spec.ts'
import type { Connection } from './connection.ts'

export type SectionsRoom = {
  /** Boards, then ledges, then braces, each in the order they were added. */
  list: () => KeptSection[]
  add: (use: KeptSection['use'], section: Section) => void
  /** False when there is no such section. Jobs keep the section they copied. */
  change: (id: number, section: Section) => boolean
  remove: (id: number) => boolean
}

type Stored = {
  id: number
  use: KeptSection['use']
  name: string
  species: string
  thickness: number
  width: number
  tongue: number | null
  groove: number | null
  source: string
}

/** Where a section's sizes come from once the workshop has entered or set them right itself. */
const own = 'this workshop'

const keptFrom = ({ id, use, source, tongue, groove, ...sizes }: Stored): KeptSection => ({
  id,
  use,
  source,
  section: { ...sizes, ...(tongue === null ? {} : { tongue }), ...(groove === null ? {} : { groove }) },
})

const cells = (section: Section) => [
  section.name,
  section.species,
  section.thickness,
  section.width,
  section.tongue ?? null,
  section.groove ?? null,
]

/** The sections the workshop keeps, offered when a gate is designed. A new book brings usual ones, marked common practice. */
export function sectionsRoom({ db, read, write }: Connection): SectionsRoom {
  const all = db.prepare<[], Stored>(
    `SELECT id, use, name, species, thickness_mm AS thickness, width_mm AS width, tongue_mm AS tongue, groove_mm AS groove, source
     FROM sections ORDER BY CASE use WHEN 'boards' THEN 1 WHEN 'ledges' THEN 2 ELSE 3 END, id`,
  )
  const insert = db.prepare(
    `INSERT INTO sections (name, species, thickness_mm, width_mm, tongue_mm, groove_mm, use, source) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
  )
  const update = db.prepare(
    `UPDATE sections SET name = ?, species = ?, thickness_mm = ?, width_mm = ?, tongue_mm = ?, groove_mm = ?, source = ? WHERE id = ?`,
  )
  const drop = db.prepare('DELETE FROM sections WHERE id = ?')
  return {
    list: () => read(() => all.all()).map(keptFrom),
    add: (use, section) => write(() => void insert.run(...cells(section), use, own)),
    change: (id, section) => write(() => update.run(...cells(section), own, id).changes > 0),
    remove: (id) => write(() => drop.run(id).changes > 0),
  }
}
