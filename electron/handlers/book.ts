import { dirname } from 'node:path'
import { good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

/** What the window shows before anything is opened. */
export const summariseBook: Handler<'book.summary'> = ({ book, bookFolder = 'own' }) => {
  const settings = book.settings.read()
  const folder = dirname(book.path)
  return good({ workshopName: settings.name, ...book.jobs.count(), folder, settings, folderLies: bookFolder })
}

export const changeSettings: Handler<'settings.change'> = ({ book }, settings) =>
  good(book.settings.change(settings))

export const removeSample: Handler<'sample.remove'> = ({ book }) => good({ removed: book.sample.remove() })
