import * as v from 'valibot'
import { specShape, type GateSpec } from '../shared/gate/spec.ts'
import type { UsualGate } from '../shared/gate/usualGate.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

export type UsualGatesRoom = {
  /** By name. */
  list: () => UsualGate[]
  one: (id: number) => UsualGate | undefined
  /** False when there is one of that name already. */
  add: (gate: Pick<UsualGate, 'name' | 'unit' | 'spec'>) => boolean
  /** False when another has that name. */
  rename: (id: number, name: string) => boolean
  /** False when there is none. Jobs that were started from it keep all of it. */
  remove: (id: number) => boolean
}

type Stored = Omit<UsualGate, 'spec'> & { spec: string }

function gateFrom({ spec, ...rest }: Stored): UsualGate {
  const read = v.safeParse(specShape, JSON.parse(spec) as unknown)
  if (!read.success)
    throw new BookProblem(
      'damaged',
      `The usual gate ‘${rest.name}’ can’t be read: the job book is damaged there. Bring back a copy of the book.`,
      read.issues,
    )
  return { ...rest, spec: read.output satisfies GateSpec }
}

const columns = 'id, name, unit, spec, kept_at AS keptAt'

/** The gates that the workshop makes again and again. */
export function usualGatesRoom({ db, now, read, write }: Connection): UsualGatesRoom {
  const all = db.prepare<[], Stored>(`SELECT ${columns} FROM usual_gates ORDER BY name, id`)
  const byId = db.prepare<[number], Stored>(`SELECT ${columns} FROM usual_gates WHERE id = ?`)
  const named = db.prepare<[string, number], { id: number }>(
    'SELECT id FROM usual_gates WHERE name = ? AND id <> ?',
  )
  const insert = db.prepare('INSERT INTO usual_gates (name, unit, spec, kept_at) VALUES (?, ?, ?, ?)')
  const update = db.prepare('UPDATE usual_gates SET name = ? WHERE id = ?')
  const drop = db.prepare('DELETE FROM usual_gates WHERE id = ?')
  const add = ({ name, unit, spec }: Pick<UsualGate, 'name' | 'unit' | 'spec'>): boolean =>
    named.get(name, 0) === undefined && insert.run(name, unit, JSON.stringify(spec), now()).changes > 0
  return {
    list: () => read(() => all.all()).map(gateFrom),
    one: (id) => {
      const found = read(() => byId.get(id))
      return found && gateFrom(found)
    },
    add: (gate) => write(() => add(gate)),
    rename: (id, name) => write(() => named.get(name, id) === undefined && update.run(name, id).changes > 0),
    remove: (id) => write(() => drop.run(id).changes > 0),
  }
}
