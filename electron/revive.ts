import type { BrowserWindow, Dialog } from 'electron'
import { appAddress, isAppAddress } from './appProtocol.ts'
import { faultWords } from './discreet.ts'
import type { Said } from './inWords.ts'

/** What bringing a window back takes. clock gives milliseconds that only go forward; said: what is asked in the workshop's language. */
export type Reviving = {
  window: BrowserWindow
  dialog: Pick<Dialog, 'showMessageBox'>
  log: (line: string) => void
  clock: () => number
  quit: () => void
  said: Said
}

/** More deaths than this within `span` and something about the place itself is wrong: then the person is asked. */
const mostDeaths = 3
const span = 60_000

const keeps = 'This screen keeps closing by itself. What you entered is kept.'
const hangs = 'This screen has stopped answering. What you entered is kept.'

/** What is known of a window's screen: where it stands, when it died, whether the person ended it, and the question that lies before him. */
type Life = { at: string; deaths: number[]; byHand: boolean; asking: AbortController | undefined }

type Revived = Reviving & { life: Life; load: (address: string) => void }

const askAfterDeaths = async ({ window, dialog, quit, life, load, said }: Revived): Promise<void> => {
  const { response } = await dialog.showMessageBox(window, {
    type: 'warning',
    message: said(keeps),
    buttons: ['Open the list of jobs', 'Close Bracework'].map(said),
    defaultId: 0,
    cancelId: 0,
  })
  if (response === 1) return quit()
  life.deaths = []
  life.at = appAddress
  load(appAddress)
}

const afterDeath = (revived: Revived): void => {
  const { life, clock, load } = revived
  life.asking?.abort()
  const since = clock() - span
  if (!life.byHand) life.deaths = [...life.deaths.filter((at) => at > since), clock()]
  life.byHand = false
  if (life.deaths.length > mostDeaths) void askAfterDeaths(revived)
  else load(life.at)
}

const offer = async ({ window, dialog, log, life, said }: Revived): Promise<void> => {
  if (life.asking) return
  log('the screen doesn’t answer')
  const { signal } = (life.asking = new AbortController())
  const { response } = await dialog.showMessageBox(window, {
    type: 'warning',
    message: said(hangs),
    buttons: ['Wait', 'Open it again'].map(said),
    defaultId: 0,
    cancelId: 0,
    signal,
  })
  life.asking = undefined
  if (response !== 1 || signal.aborted) return
  life.byHand = true
  window.webContents.forcefullyCrashRenderer()
}

/**
 * Brings a screen that died or hangs back at the place it stood at. One that died is opened again at once, and the
 * person is asked only if it keeps dying; one that hangs is offered. Entries go to the book as they are typed, and those
 * the book had not taken yet are laid by in the window's own store, so nothing is typed twice.
 */
export const reviveWindow = (reviving: Reviving): void => {
  const { window, log } = reviving
  const contents = window.webContents
  const life: Life = { at: appAddress, deaths: [], byHand: false, asking: undefined }
  const load = (address: string): void => {
    contents
      .loadURL(address)
      .catch((error: unknown) => log(`the screen couldn’t be opened: ${faultWords(error)}`))
  }
  const revived = { ...reviving, life, load }
  contents.on('did-navigate-in-page', (_event, address, isMainFrame) => {
    if (isMainFrame && isAppAddress(address)) life.at = address
  })
  contents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return
    log(`the screen ended: ${reason}, ${exitCode}`)
    afterDeath(revived)
  })
  window.on('unresponsive', () => void offer(revived))
  window.on('responsive', () => life.asking?.abort())
}
