import * as v from 'valibot'
import { specShape } from '../shared/gate/spec.ts'
import type { JobOption } from '../shared/pricing/quotation.ts'
import { entryShape } from '../shared/pricing/shapes.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

/** What an option says: its name, its gate (null: the job's own), what was put for it. */
export type OptionEntry = Pick<JobOption, 'name' | 'spec' | 'entry'>

/** A customer is shown no more versions of a gate than this. */
export const mostOptions = 10

export type OptionsRoom = {
  /** A job's options by their position. */
  list: (jobId: number) => JobOption[]
  one: (id: number) => JobOption | undefined
  /** Behind the others. undefined when there is no such job, or it has ten options already. */
  add: (jobId: number, option: OptionEntry) => JobOption | undefined
  /** undefined when the option isn't at that version any more, or gone: another window was quicker. */
  change: (id: number, version: number, option: OptionEntry) => JobOption | undefined
  /** Takes an option out; what it said stays in the log of the job's changes. False when there is none. */
  remove: (id: number) => boolean
}

type Stored = Omit<JobOption, 'spec' | 'entry'> & { spec: string | null; entry: string }

const shape = v.object({ spec: v.nullable(specShape), entry: entryShape })

function optionFrom({ spec, entry, ...rest }: Stored): JobOption {
  const read = v.safeParse(shape, {
    spec: spec === null ? null : (JSON.parse(spec) as unknown),
    entry: JSON.parse(entry) as unknown,
  })
  if (!read.success)
    throw new BookProblem(
      'damaged',
      `Option ‘${rest.name}’ can’t be read: the job book is damaged there. Bring back a copy of the book.`,
      read.issues,
    )
  return { ...rest, ...read.output }
}

const columns = 'id, job_id AS jobId, position, name, spec, entry, version'

const statements = ({ db }: Connection) => ({
  list: db.prepare<[number], Stored>(`SELECT ${columns} FROM options WHERE job_id = ? ORDER BY position, id`),
  one: db.prepare<[number], Stored>(`SELECT ${columns} FROM options WHERE id = ?`),
  job: db.prepare<[number], { id: number }>('SELECT id FROM jobs WHERE id = ? AND put_away = 0'),
  add: db.prepare('INSERT INTO options (job_id, position, name, spec, entry) VALUES (?, ?, ?, ?, ?)'),
  change: db.prepare(
    'UPDATE options SET name = ?, spec = ?, entry = ?, version = version + 1 WHERE id = ? AND version = ?',
  ),
  remove: db.prepare('DELETE FROM options WHERE id = ?'),
  closeUp: db.prepare('UPDATE options SET position = position - 1 WHERE job_id = ? AND position > ?'),
  log: db.prepare('INSERT INTO changes (job_id, path, before, after, at) VALUES (?, ?, ?, ?, ?)'),
})

const cells = ({ name, spec, entry }: OptionEntry): [string, string | null, string] => [
  name,
  spec === null ? null : JSON.stringify(spec),
  JSON.stringify(entry),
]

const contents = ({ name, spec, entry }: OptionEntry): OptionEntry => ({ name, spec, entry })

/** The options' room. What stood in an option before a change or its removal stays in the job's log, as with the job's own fields. */
export function optionsRoom(connection: Connection): OptionsRoom {
  const { now, read, write } = connection
  const run = statements(connection)
  const one = (id: number): JobOption | undefined => {
    const found = run.one.get(id)
    return found && optionFrom(found)
  }
  const log = (before: JobOption, after: OptionEntry | null): void => {
    const is = JSON.stringify(after && contents(after))
    run.log.run(before.jobId, `option.${before.id}`, JSON.stringify(contents(before)), is, now())
  }
  const add = (jobId: number, option: OptionEntry): JobOption | undefined => {
    const position = run.list.all(jobId).length + 1
    if (!run.job.get(jobId) || position > mostOptions) return undefined
    return one(Number(run.add.run(jobId, position, ...cells(option)).lastInsertRowid))
  }
  const change = (id: number, version: number, option: OptionEntry): JobOption | undefined => {
    const before = one(id)
    if (before?.version !== version) return undefined
    run.change.run(...cells(option), id, version)
    log(before, option)
    return one(id)
  }
  const remove = (id: number): boolean => {
    const before = one(id)
    if (!before) return false
    run.remove.run(id)
    run.closeUp.run(before.jobId, before.position)
    log(before, null)
    return true
  }
  return {
    list: (jobId) => read(() => run.list.all(jobId)).map(optionFrom),
    one: (id) => read(() => one(id)),
    add: (jobId, option) => write(() => add(jobId, option)),
    change: (id, version, option) => write(() => change(id, version, option)),
    remove: (id) => write(() => remove(id)),
  }
}
