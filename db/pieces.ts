import { pieceAbout, unseenWords } from '../shared/job/soughtWords.ts'
import { constructionWords, isConstruction } from '../shared/job/kindWords.ts'
import type { FoundPiece, HiddenPlace } from '../shared/job/found.ts'
import type { Connection } from './connection.ts'

/** A job and the words it was found by that its row doesn't show, as `soughtWords` gives them. */
export type Unseen = { id: number; words: string[] }

export type PiecesRoom = { find: (rows: Unseen[]) => FoundPiece[] }

type Hidden = Record<'notes' | 'phone' | 'address' | 'construction', string> &
  Record<'species' | 'name', string | null>

const places = (hidden: Hidden): [HiddenPlace, string][] => [
  ['notes', hidden.notes],
  ['timber', [hidden.species ?? '', hidden.name ?? ''].filter((words) => words !== '').join(', ')],
  ['kind', isConstruction(hidden.construction) ? constructionWords[hidden.construction] : ''],
  ['telephone', hidden.phone],
  ['address', hidden.address],
]

/** Where words stand that the list doesn't show: of each job the place that holds most of them, the notes first. */
export function piecesRoom({ db, read }: Connection): PiecesRoom {
  const one = db.prepare<[number], Hidden>(
    `SELECT jobs.notes, jobs.construction, customers.phone, customers.address,
       json_extract(jobs.entry, '$.spec.boards.section.species') AS species, json_extract(jobs.entry, '$.spec.boards.section.name') AS name
     FROM jobs JOIN customers ON customers.id = jobs.customer_id WHERE jobs.id = ?`,
  )
  const pieceOf = ({ id, words }: Unseen): FoundPiece[] => {
    const hidden = one.get(id)
    if (!hidden) return []
    const [best] = places(hidden)
      .map(([place, text]) => ({ place, text, missing: unseenWords(words, [text]).length }))
      .filter(({ missing }) => missing < words.length)
      .sort((a, b) => a.missing - b.missing)
    const piece = best && pieceAbout(best.text, words)
    return best && piece !== undefined ? [{ id, place: best.place, words: piece }] : []
  }
  return { find: (rows) => read(() => rows.flatMap(pieceOf)) }
}
