import { createHash } from 'node:crypto'
import type { Design } from '../shared/gate/designModel.ts'
import type { GateSpec } from '../shared/gate/spec.ts'
import type { Paper } from '../shared/job/job.ts'
import type { PaperHeader, PaperParts } from '../shared/job/issuedPaper.ts'
import type { PaperFormat } from '../shared/papers/page.ts'
import type { QuotedMoney } from '../shared/pricing/quotation.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'

/** A paper ready to be issued. version is the job's, as it stood when the paper was made; spec, figures and parts of a quotation are its first option's. */
export type NewPaper = {
  jobId: number
  version: number
  kind: Paper['kind']
  revision: number
  format: PaperFormat
  issuedAt: string
  engine: string
  spec: GateSpec
  figures: Design['figures']
  parts: PaperParts
  header: PaperHeader
  /** A quotation's money; a card has none. */
  money?: QuotedMoney
  pages: number
  bytes: Uint8Array
}

/** What an issued paper was made from. */
export type FrozenPaper = {
  paper: Paper
  spec: GateSpec
  figures: Design['figures']
  parts: PaperParts
  header: PaperHeader
}

export type PapersRoom = {
  /** A job's papers, the newest first. */
  list: (jobId: number) => Paper[]
  /** The number the next issue of this kind of paper gets: 1, 2, 3 … for each job. */
  nextRevision: (jobId: number, kind: Paper['kind']) => number
  /** Issues a paper; undefined, and nothing written, when the job has changed or was issued again while the paper was made. */
  issue: (paper: NewPaper) => Paper | undefined
  /** A paper with its very bytes. Throws BookProblem 'damaged' when they are no longer those that were issued. */
  bytes: (id: number) => { paper: Paper; bytes: Uint8Array } | undefined
  frozen: (id: number) => FrozenPaper | undefined
}

type Frozen = Paper & Record<'spec' | 'figures' | 'parts' | 'header', string>

/** What a paper is called in a sentence. */
export const paperName = ({ kind, revision }: Pick<Paper, 'kind' | 'revision'>): string =>
  kind === 'quotation' ? `quotation ${revision}` : `card revision ${revision}`

const capital = (words: string): string => `${words[0]?.toUpperCase()}${words.slice(1)}`

/** A paper without its bytes and what it was made from. */
export const paperColumns = `papers.id, papers.job_id AS jobId, papers.kind, papers.revision, papers.format, papers.issued_at AS issuedAt, papers.engine,
  papers.sha256, papers.pages, length(papers.bytes) AS size`

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

function statements({ db }: Connection) {
  return {
    list: db.prepare<[number], Paper>(`SELECT ${paperColumns} FROM papers WHERE job_id = ? ORDER BY id DESC`),
    one: db.prepare<[number], Paper>(`SELECT ${paperColumns} FROM papers WHERE id = ?`),
    bytes: db.prepare<[number], { bytes: Uint8Array }>('SELECT bytes FROM papers WHERE id = ?'),
    frozen: db.prepare<[number], Frozen>(
      `SELECT ${paperColumns}, spec, figures, parts, header FROM papers WHERE id = ?`,
    ),
    latest: db.prepare<[number, string], { revision: number | null }>(
      'SELECT max(revision) AS revision FROM papers WHERE job_id = ? AND kind = ?',
    ),
    version: db.prepare<[number], { version: number }>(
      'SELECT version FROM jobs WHERE id = ? AND put_away = 0',
    ),
    insert: db.prepare(
      `INSERT INTO papers (job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header, money, pages, bytes, sha256)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ),
  }
}

/** What was frozen is the program's own writing: it was typed when it went in, and is only ever read back. */
function thawed({ spec, figures, parts, header, ...paper }: Frozen): FrozenPaper {
  try {
    return {
      paper,
      spec: JSON.parse(spec) as GateSpec,
      figures: JSON.parse(figures) as Design['figures'],
      parts: JSON.parse(parts) as PaperParts,
      header: JSON.parse(header) as PaperHeader,
    }
  } catch (error) {
    throw new BookProblem(
      'damaged',
      `What ${paperName(paper)} was made from can’t be read: the job book is damaged there. Bring back a copy of the book.`,
      error,
    )
  }
}

const damagedPaper = (paper: Paper): BookProblem =>
  new BookProblem(
    'damaged',
    `${capital(paperName(paper))} is damaged: it is no longer what was issued, so it is not shown. Bring back a copy of the job book, or issue it again.`,
  )

type Statements = ReturnType<typeof statements>

const following = (run: Statements, jobId: number, kind: Paper['kind']): number =>
  (run.latest.get(jobId, kind)?.revision ?? 0) + 1

function insert(run: Statements, paper: NewPaper): Paper | undefined {
  const { jobId, kind, revision, format, issuedAt, engine, pages } = paper
  const frozen = [paper.spec, paper.figures, paper.parts, paper.header].map((part) => JSON.stringify(part))
  const money = paper.money === undefined ? null : JSON.stringify(paper.money)
  const bytes = Buffer.from(paper.bytes)
  const head = [jobId, kind, revision, format, issuedAt, engine]
  const cells = [...head, ...frozen, money, pages, bytes, hashOf(bytes)]
  return run.one.get(Number(run.insert.run(...cells).lastInsertRowid))
}

/** The papers' room of the book. Papers are only ever added; the book itself refuses to alter or drop one. */
export function papersRoom(connection: Connection): PapersRoom {
  const { read, write } = connection
  const run = statements(connection)
  return {
    list: (jobId) => read(() => run.list.all(jobId)),
    nextRevision: (jobId, kind) => read(() => following(run, jobId, kind)),
    issue: (paper) =>
      write(() => {
        const { jobId, kind, version, revision } = paper
        const stands = run.version.get(jobId)?.version === version && following(run, jobId, kind) === revision
        return stands ? insert(run, paper) : undefined
      }),
    bytes: (id) => {
      const paper = read(() => run.one.get(id))
      const bytes = read(() => run.bytes.get(id))?.bytes
      if (!paper || !bytes) return undefined
      if (hashOf(bytes) !== paper.sha256) throw damagedPaper(paper)
      return { paper, bytes }
    },
    frozen: (id) => {
      const found = read(() => run.frozen.get(id))
      return found && thawed(found)
    },
  }
}
