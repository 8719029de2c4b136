import { homedir } from 'node:os'
import { join } from 'node:path'
import {
  app,
  BrowserWindow,
  clipboard,
  dialog,
  ipcMain,
  Menu,
  protocol,
  screen,
  session,
  shell,
} from 'electron'
import { BookProblem } from '../db/bookProblem.ts'
import { readMigrations } from '../db/migrate.ts'
import { jobFileEnding } from '../shared/jobFileEnding.ts'
import { appAddress, appScheme, serveApp } from './appProtocol.ts'
import { bookPlace } from './bookPlace.ts'
import { chosenFolder } from './chosenFolder.ts'
import { catchFaults } from './catchFaults.ts'
import { faultWords } from './discreet.ts'
import { handedFiles } from './handedFile.ts'
import { listenForRequests } from './ipc.ts'
import { logInto, now } from './log.ts'
import { makeCard, warmPainter } from './makeCard.ts'
import { makeBenchPaper } from './makeBenchPaper.ts'
import { makeQuotation } from './makeQuotation.ts'
import { menuFor } from './menu.ts'
import { menuActions } from './menuActions.ts'
import { quietSession, stayOffline } from './offline.ts'
import { openedBook, type OpenedBook } from './openedBook.ts'
import { keepPlace, openingPlace } from './placeNote.ts'
import { reviveWindow } from './revive.ts'
import { printPaperWith } from './printing/printPaper.ts'
import { makeShelf } from './printing/shelf.ts'
import { guardPages, guardSession } from './security.ts'
import { watchKeeping } from './unkept.ts'
import { makeWindow, showWindow } from './window.ts'

/** This file runs only as built: build/out/main/main.cjs, with the rest of the program beside its folder. */
const built = (path: string): string => join(import.meta.dirname, '..', path)

const logFolder = app.getPath('logs')
const log = logInto(logFolder)
const handed = handedFiles(jobFileEnding, log)
const placeNote = join(app.getPath('userData'), 'window.json')
const shelf = makeShelf()

const openTheBook = (): Promise<OpenedBook> =>
  openedBook({
    path: bookPlace({ platform: process.platform, env: process.env, home: homedir() }),
    now,
    makeCard,
    makeQuotation,
    makeBenchPaper,
    print: printPaperWith(BrowserWindow),
    shelf,
    warm: warmPainter,
    log,
    handedJob: handed.take,
    migrations: readMigrations(built('migrations')),
    keepingWorker: built('main/keepingWorker.cjs'),
    chooseFolder: () => chosenFolder(dialog),
  })

/** The one window, where it last stood, with its menu; a screen of it that dies or hangs comes back. */
const openWindow = (): BrowserWindow => {
  const window = makeWindow(BrowserWindow, built('main/preload.cjs'), openingPlace(placeNote, screen))
  keepPlace(window, screen, { path: placeNote, log })
  reviveWindow({ window, dialog, log, clock: () => performance.now(), quit: () => app.quit() })
  const { platform, versions } = process
  const logFile = join(logFolder, 'bracework.log')
  const actions = menuActions({ window, clipboard, shell, logFile, platform, versions })
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuFor(platform, actions)))
  return window
}

const open = async (): Promise<void> => {
  await app.whenReady()
  const book = await openTheBook()
  app.once('will-quit', () => void book.close())
  guardSession(session.defaultSession)
  quietSession(session.defaultSession)
  watchKeeping(session.defaultSession, {
    tell: (sentence) => dialog.showErrorBox('Bracework', sentence),
    log,
  })
  serveApp(protocol, { rendererFolder: built('renderer'), paperOf: shelf.find })
  const window = openWindow()
  app.on('second-instance', (_event, args, folder) => {
    handed.note(args, folder)
    showWindow(window)
  })
  listenForRequests({ ipcMain, windowId: () => window.webContents.id, answer: book.answer, log })
  await window.loadURL(appAddress)
}

const giveUp = (error: unknown): void => {
  log(`couldn’t start: ${faultWords(error)}`)
  const known = error instanceof BookProblem
  dialog.showErrorBox(
    'Bracework',
    known ? error.message : 'Bracework couldn’t start. Close it and start it again.',
  )
  app.exit(1)
}

if (app.requestSingleInstanceLock()) {
  catchFaults(process, log)
  app.enableSandbox()
  stayOffline(app)
  protocol.registerSchemesAsPrivileged([appScheme])
  guardPages(app)
  app.on('window-all-closed', () => app.quit())
  handed.note(process.argv.slice(1), process.cwd())
  app.on('open-file', (event, path) => {
    event.preventDefault()
    handed.note([path], '/')
  })
  open().catch(giveUp)
} else {
  app.quit()
}
