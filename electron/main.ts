import { homedir } from 'node:os'
import { join } from 'node:path'
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron'
import { BookProblem } from '../db/bookProblem.ts'
import { readMigrations } from '../db/migrate.ts'
import { appAddress, appScheme, serveApp } from './appProtocol.ts'
import { bookPlace } from './bookPlace.ts'
import { chosenFolder } from './chosenFolder.ts'
import { listenForRequests } from './ipc.ts'
import { logInto, now } from './log.ts'
import { makeCard } from './makeCard.ts'
import { makeBenchPaper } from './makeBenchPaper.ts'
import { makeQuotation } from './makeQuotation.ts'
import { menuFor } from './menu.ts'
import { openedBook, type OpenedBook } from './openedBook.ts'
import { guardPages, guardSession } from './security.ts'
import { makeWindow, showWindow } from './window.ts'

/** This file runs only as built: build/out/main/main.cjs, with the rest of the program beside its folder. */
const built = (path: string): string => join(import.meta.dirname, '..', path)

const log = logInto(app.getPath('logs'))

const openTheBook = (): Promise<OpenedBook> =>
  openedBook({
    path: bookPlace({ platform: process.platform, env: process.env, home: homedir() }),
    now,
    makeCard,
    makeQuotation,
    makeBenchPaper,
    log,
    migrations: readMigrations(built('migrations')),
    keepingWorker: built('main/keepingWorker.cjs'),
    chooseFolder: () => chosenFolder(dialog),
  })

const open = async (): Promise<void> => {
  await app.whenReady()
  const book = await openTheBook()
  app.once('will-quit', () => void book.close())
  guardSession(session.defaultSession)
  serveApp(protocol, built('renderer'))
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuFor(process.platform)))
  const window = makeWindow(BrowserWindow, built('main/preload.cjs'))
  app.on('second-instance', () => showWindow(window))
  listenForRequests({ ipcMain, windowId: () => window.webContents.id, answer: book.answer, log })
  await window.loadURL(appAddress)
}

const giveUp = (error: unknown): void => {
  log(error instanceof Error ? (error.stack ?? error.message) : String(error))
  const known = error instanceof BookProblem
  dialog.showErrorBox(
    'Bracework',
    known ? error.message : 'Bracework couldn’t start. Close it and start it again.',
  )
  app.exit(1)
}

if (app.requestSingleInstanceLock()) {
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([appScheme])
  guardPages(app)
  app.on('window-all-closed', () => app.quit())
  open().catch(giveUp)
} else {
  app.quit()
}
