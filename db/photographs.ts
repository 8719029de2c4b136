import { createHash } from 'node:crypto'
import { mostPhotographs, type Photograph } from '../shared/notes/photograph.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'
import { jobStatements } from './jobStatements.ts'
import { wordsKept } from './noteWords.ts'
import { searchRoom } from './search.ts'

/** A photograph about to be put in, both pictures looked at by the caller. */
export type NewPhotograph = Pick<Photograph, 'jobId' | 'words' | 'width' | 'height'> & {
  bytes: Uint8Array
  thumbnail: Uint8Array
}

/** A photograph with its small picture; null where that is no longer what was put in. */
export type WithThumbnail = { photograph: Photograph; thumbnail: Uint8Array | null }

export type PhotographsRoom = {
  /** A job's photographs in the order they were added, those taken away left out. */
  list: (jobId: number) => WithThumbnail[]
  /** Undefined when there is no such job. Throws BookProblem 'refused' when a job has its 200. */
  add: (photograph: NewPhotograph) => WithThumbnail | undefined
  /** Its very bytes. Throws BookProblem 'damaged' when they are no longer those that were put in. */
  bytes: (id: number) => { photograph: Photograph; bytes: Uint8Array } | undefined
  describe: (id: number, words: string) => Photograph | undefined
  /** Takes it away, or puts it back. It never leaves the book. */
  putAway: (id: number, away: boolean) => Photograph | undefined
}

const columns = `id, job_id AS jobId, place, words, width, height, added_at AS addedAt, sha256, length(bytes) AS size`

type WithSmall = Photograph & { thumbnail: Uint8Array; thumbnailHash: string }

const statements = ({ db }: Connection) => ({
  list: db.prepare<[number], WithSmall>(
    `SELECT ${columns}, thumbnail, thumbnail_sha256 AS thumbnailHash FROM photographs WHERE job_id = ? AND put_away = 0 ORDER BY place`,
  ),
  one: db.prepare<[number], Photograph & { putAway: number }>(
    `SELECT ${columns}, put_away AS putAway FROM photographs WHERE id = ?`,
  ),
  bytes: db.prepare<[number], { bytes: Uint8Array }>('SELECT bytes FROM photographs WHERE id = ?'),
  last: db
    .prepare<[number], number>('SELECT ifnull(max(place), 0) FROM photographs WHERE job_id = ?')
    .pluck(),
  add: db.prepare(
    `INSERT INTO photographs (job_id, place, words, width, height, added_at, sha256, thumbnail_sha256, thumbnail, bytes)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
  describe: db.prepare('UPDATE photographs SET words = ? WHERE id = ?'),
  putAway: db.prepare('UPDATE photographs SET put_away = ? WHERE id = ?'),
})

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

const damaged = ({ place }: Photograph): BookProblem =>
  new BookProblem(
    'damaged',
    `Photograph ${place} is damaged: it is no longer what was put in, so it is not shown. Bring back a copy of the job book, or add it again.`,
  )

const full = (): BookProblem =>
  new BookProblem(
    'refused',
    `This job has its ${mostPhotographs} photographs, which is as many as one job holds. Start a second job for the rest.`,
  )

const shown = ({ thumbnail, thumbnailHash, ...photograph }: WithSmall): WithThumbnail => ({
  photograph,
  thumbnail: hashOf(thumbnail) === thumbnailHash ? thumbnail : null,
})

type Statements = ReturnType<typeof statements>

const oneBy =
  (run: Statements) =>
  (id: number): Photograph | undefined => {
    const found = run.one.get(id)
    if (!found) return undefined
    const { putAway: _, ...photograph } = found
    return photograph
  }

/** How a photograph is put down, and what is said of it changed, with the words it is found by and the log. To be called inside one writing. */
function photographWriting(connection: Connection, run: Statements) {
  const { db, now } = connection
  const one = oneBy(run)
  const jobs = jobStatements(connection)
  const keepWords = wordsKept(db, searchRoom(connection), jobs)
  const log = ({ jobId, place }: Photograph, what: string, [before, after]: [unknown, unknown]): void => {
    if (before !== after)
      jobs.log.run(jobId, `photograph.${place}.${what}`, JSON.stringify(before), JSON.stringify(after), now())
  }

  const add = (given: NewPhotograph): WithThumbnail | undefined => {
    const { jobId, words, width, height } = given
    if (!jobs.one.get(jobId)) return undefined
    const last = run.last.get(jobId) ?? 0
    if (last >= mostPhotographs) throw full()
    const [thumbnail, bytes] = [Buffer.from(given.thumbnail), Buffer.from(given.bytes)]
    const hashes = [hashOf(bytes), hashOf(thumbnail)]
    const cells = [jobId, last + 1, words, width, height, now(), ...hashes, thumbnail, bytes]
    const photograph = one(Number(run.add.run(...cells).lastInsertRowid))
    keepWords(jobId)
    return photograph && { photograph, thumbnail }
  }

  const describe = (id: number, words: string): Photograph | undefined => {
    const before = one(id)
    if (!before) return undefined
    run.describe.run(words, id)
    log(before, 'words', [before.words, words])
    keepWords(before.jobId)
    return one(id)
  }

  const putAway = (id: number, away: boolean): Photograph | undefined => {
    const before = run.one.get(id)
    if (!before) return undefined
    run.putAway.run(away ? 1 : 0, id)
    log(before, 'putAway', [before.putAway === 1, away])
    keepWords(before.jobId)
    return one(id)
  }

  return { add, describe, putAway }
}

/** The room of photographs. Their pictures are only ever added; the book itself refuses to alter or drop one. */
export function photographsRoom(connection: Connection): PhotographsRoom {
  const { read, write } = connection
  const run = statements(connection)
  const one = oneBy(run)
  const { add, describe, putAway } = photographWriting(connection, run)
  return {
    list: (jobId) => read(() => run.list.all(jobId)).map(shown),
    add: (photograph) => write(() => add(photograph)),
    bytes: (id) => {
      const photograph = read(() => one(id))
      const bytes = read(() => run.bytes.get(id))?.bytes
      if (!photograph || !bytes) return undefined
      if (hashOf(bytes) !== photograph.sha256) throw damaged(photograph)
      return { photograph, bytes }
    },
    describe: (id, words) => write(() => describe(id, words)),
    putAway: (id, away) => write(() => putAway(id, away)),
  }
}
