import { speciesNamed } from '../../shared/timber/species.ts'
import type { Section } from '../../shared/gate/spec.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { missing } from './missing.ts'

export const listSections: Handler<'sections.list'> = ({ book }) => good(book.sections.list())

/** A section whose timber has no known weight would be refused later in every gate it is chosen for, so it is said here. */
function knownTimber(section: Section): Result<Section> {
  if (speciesNamed(section.species)) return good(section)
  return bad({
    code: 'unknown',
    field: 'section.species',
    message: `'${section.species}' is not a known timber; choose one from the list`,
  })
}

export const addSection: Handler<'sections.add'> = ({ book }, { use, section }) => {
  const known = knownTimber(section)
  if (!known.ok) return known
  book.sections.add(use, section)
  return good(book.sections.list())
}

export const changeSection: Handler<'sections.change'> = ({ book }, { id, section }) => {
  const known = knownTimber(section)
  if (!known.ok) return known
  return book.sections.change(id, section) ? good(book.sections.list()) : bad(missing('id', 'section'))
}

export const removeSection: Handler<'sections.remove'> = ({ book }, { id }) =>
  book.sections.remove(id) ? good(book.sections.list()) : bad(missing('id', 'section'))
