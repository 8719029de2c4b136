import type { WithThumbnail } from '../../db/photographs.ts'
import type { Takes } from '../../shared/contract.ts'
import { jpegFacts } from '../../shared/notes/jpegFacts.ts'
import {
  longestSide,
  mostPhotographBytes,
  mostThumbnailBytes,
  thumbnailSide,
  type ShownPhotograph,
} from '../../shared/notes/photograph.ts'
import { good, type Problem } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { foundOr, missing } from './missing.ts'

const inText = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')

const shown = ({ photograph, thumbnail }: WithThumbnail): ShownPhotograph => ({
  ...photograph,
  thumbnail: thumbnail && inText(thumbnail),
})

/** A job's photographs with their small pictures, those that are damaged named by having none. */
export const listPhotographs: Handler<'photographs.list'> = ({ book }, { jobId }) =>
  good(book.photographs.list(jobId).map(shown))

/** The rules a picture is held to, whoever sent it. */
type Rules = { field: string; longest: number; most: number }
const pictureRules: Rules = { field: 'base64', longest: longestSide, most: mostPhotographBytes }
const thumbnailRules: Rules = { field: 'thumbnail', longest: thumbnailSide, most: mostThumbnailBytes }

/** What is wrong with a picture that should be a JPEG scaled down, with nothing in it of where and when it was taken. */
function wrongWith(bytes: Uint8Array, { field, longest, most }: Rules): Problem[] {
  const refused = (message: string): Problem[] => [{ code: 'refused', field, message }]
  if (bytes.length > most)
    return refused(
      `it weighs ${(bytes.length / 1e6).toFixed(2)} MB, accepted is up to ${(most / 1e6).toFixed(2)} MB`,
    )
  const facts = jpegFacts(bytes)
  if (!facts) return refused('it is no whole JPEG picture')
  if (Math.max(facts.width, facts.height) > longest)
    return refused(
      `it is ${facts.width} × ${facts.height} dots, accepted is up to ${longest} on the long side`,
    )
  return facts.cameraNotes
    ? refused('the camera’s own notes are still in it; accepted is a picture without')
    : []
}

const wrongSize = (bytes: Uint8Array, { width, height }: Takes<'photographs.add'>): Problem[] => {
  const facts = jpegFacts(bytes)
  if (!facts || (facts.width === width && facts.height === height)) return []
  const message = `got ${width} × ${height}, but the picture is ${facts.width} × ${facts.height}`
  return [{ code: 'refused', field: 'width', message }]
}

/** Puts a photograph into a job: scaled down already, and looked at here by its content. */
export const addPhotograph: Handler<'photographs.add'> = ({ book }, given) => {
  const { jobId, words, width, height } = given
  const [bytes, thumbnail] = [Buffer.from(given.base64, 'base64'), Buffer.from(given.thumbnail, 'base64')]
  const problems = [
    ...wrongWith(bytes, pictureRules),
    ...wrongWith(thumbnail, thumbnailRules),
    ...wrongSize(bytes, given),
  ]
  if (problems.length > 0) return { ok: false, problems }
  const added = book.photographs.add({ jobId, words: words.trim(), width, height, bytes, thumbnail })
  return added ? good(shown(added)) : { ok: false, problems: [missing('jobId', 'job')] }
}

/** A photograph's very bytes, their hash checked just now. */
export const readPhotograph: Handler<'photographs.bytes'> = ({ book }, { id }) => {
  const found = foundOr(book.photographs.bytes(id), 'id', 'photograph')
  if (!found.ok) return found
  return good({ photograph: found.value.photograph, base64: inText(found.value.bytes) })
}

export const describePhotograph: Handler<'photographs.describe'> = ({ book }, { id, words }) =>
  foundOr(book.photographs.describe(id, words.trim()), 'id', 'photograph')

export const putPhotographAway: Handler<'photographs.putAway'> = ({ book }, { id, away }) =>
  foundOr(book.photographs.putAway(id, away), 'id', 'photograph')
