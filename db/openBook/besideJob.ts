import { createHash } from 'node:crypto'
import { received } from '../../shared/gate/parseSpec.ts'
import { jpegFacts } from '../../shared/notes/jpegFacts.ts'
import { mostPhotographBytes, mostThumbnailBytes } from '../../shared/notes/photograph.ts'
import type { JobFile } from '../../shared/openBook/jobFile.ts'
import type { OpenRow } from '../../shared/openBook/tables.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'

/** What lies beside the rows of a job's file, one for each: its papers' bytes, its photographs' and their small pictures'. */
export type BesideJob = { papers: Uint8Array[]; pictures: Uint8Array[]; smallPictures: Uint8Array[] }

const bytesOf = (words: readonly string[]): Uint8Array[] => words.map((text) => Buffer.from(text, 'base64'))

/** Bytes that aren't those whose hash stands in their row. */
const changed = (
  field: string,
  said: string,
  { rows, hash, bytes }: { rows: readonly OpenRow[]; hash: string; bytes: readonly Uint8Array[] },
): Problem[] =>
  rows.flatMap((row, place) => {
    const got = createHash('sha256')
      .update(bytes[place] ?? '')
      .digest('hex')
    if (got === row[hash]) return []
    const message = `${said}: its fingerprint is ${received(got)}, accepted is ${received(row[hash])}`
    return [{ code: 'refused', field: `${field}[${place}]`, message }]
  })

/** Pictures that are no JPEG of the size their row tells, or weigh more than a photograph here may. */
const noPhotograph = (
  rows: readonly OpenRow[],
  pictures: readonly Uint8Array[],
  small: readonly Uint8Array[],
) =>
  rows.flatMap(({ width, height }, place): Problem[] => {
    const [whole, thumbnail] = [pictures[place], small[place]]
    const facts = whole && whole.length <= mostPhotographBytes ? jpegFacts(whole) : undefined
    const isSmall = thumbnail && thumbnail.length <= mostThumbnailBytes && jpegFacts(thumbnail) !== undefined
    if (facts?.width === width && facts?.height === height && isSmall) return []
    const message = `it is no photograph as they are kept here; accepted is a JPEG of ${String(width)} × ${String(height)} dots with a small picture`
    return [{ code: 'refused', field: `pictures[${place}]`, message }]
  })

/** What lies beside a job's rows, each held against its hash; every one that isn't what was issued or put in is a problem. */
export function besideJob(file: JobFile): Result<BesideJob> {
  const [papers, pictures, smallPictures] = [file.pdfs, file.pictures, file.smallPictures].map(bytesOf)
  const beside = { papers: papers ?? [], pictures: pictures ?? [], smallPictures: smallPictures ?? [] }
  const issued = 'this isn’t the paper as it was issued'
  const putIn = 'this isn’t the photograph as it was put in'
  const rows = file.photographs
  const wrong = [
    ...changed('pdfs', issued, { rows: file.papers, hash: 'sha256', bytes: beside.papers }),
    ...changed('pictures', putIn, { rows, hash: 'sha256', bytes: beside.pictures }),
    ...changed('smallPictures', putIn, { rows, hash: 'thumbnailSha256', bytes: beside.smallPictures }),
    ...noPhotograph(rows, beside.pictures, beside.smallPictures),
  ]
  return wrong.length > 0 ? bad(...wrong) : good(beside)
}
