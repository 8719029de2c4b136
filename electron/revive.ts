import type { BrowserWindow, Dialog } from 'electron'
import { appAddress, isAppAddress } from './appProtocol.ts'

/** What bringing a window back takes. clock gives milliseconds that only go forward. */
export type Reviving = {
  window: BrowserWindow
  dialog: Pick<Dialog, 'showMessageBox'>
  log: (line: string) => void
  clock: () => number
  quit: () => void
}

/** More deaths than this within `span` and something about the place itself is wrong: then the person is asked. */
const mostDeaths = 3
const span = 60_000

const kept = 'What you entered is kept.'

/**
 * Brings a screen that died or hangs back at the place it stood at. One that died is opened again at once, and the
 * person is asked only if it keeps dying; one that hangs is offered. Entries go to the book as they are typed, and those
 * the book had not taken yet are laid by in the window's own store, so nothing is typed twice.
 */
export const reviveWindow = ({ window, dialog, log, clock, quit }: Reviving): void => {
  const contents = window.webContents
  const now = {
    at: appAddress,
    deaths: [] as number[],
    byHand: false,
    asking: undefined as AbortController | undefined,
  }
  const load = (address: string): void => {
    contents
      .loadURL(address)
      .catch((error: unknown) => log(`the screen couldn’t be opened: ${String(error)}`))
  }
  contents.on('did-navigate-in-page', (_event, address, isMainFrame) => {
    if (isMainFrame && isAppAddress(address)) now.at = address
  })

  const askAfterDeaths = async (): Promise<void> => {
    const { response } = await dialog.showMessageBox(window, {
      type: 'warning',
      message: `This screen keeps closing by itself. ${kept}`,
      buttons: ['Open the list of jobs', 'Close Bracework'],
      defaultId: 0,
      cancelId: 0,
    })
    if (response === 1) return quit()
    now.deaths = []
    now.at = appAddress
    load(appAddress)
  }
  contents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return
    log(`the screen ended: ${reason}, ${exitCode}`)
    now.asking?.abort()
    const since = clock() - span
    now.deaths = now.byHand ? now.deaths : [...now.deaths.filter((at) => at > since), clock()]
    now.byHand = false
    if (now.deaths.length > mostDeaths) return void askAfterDeaths()
    load(now.at)
  })

  const offer = async (): Promise<void> => {
    if (now.asking) return
    log('the screen doesn’t answer')
    now.asking = new AbortController()
    const { response } = await dialog.showMessageBox(window, {
      type: 'warning',
      message: `This screen has stopped answering. ${kept}`,
      buttons: ['Wait', 'Open it again'],
      defaultId: 0,
      cancelId: 0,
      signal: now.asking.signal,
    })
    const answered = now.asking.signal.aborted
    now.asking = undefined
    if (response !== 1 || answered) return
    now.byHand = true
    contents.forcefullyCrashRenderer()
  }
  window.on('unresponsive', () => void offer())
  window.on('responsive', () => now.asking?.abort())
}
