import type { App, Session, WebContents } from 'electron'
import { isAppAddress, isPaperAddress } from './appProtocol.ts'

/**
 * Electron's own PDF viewer, an extension that is part of it, by its fixed address (its id is the same in every
 * Chromium), with the pieces it loads.
 */
const viewer = /^(blob:)?chrome-extension:\/\/mhjfbmdgcfjbbpaeojofohoefgiehjai\/|^chrome:\/\/resources\//

/** Whether the window may load something from there: our own files, a paper, its viewer; nothing off the machine. */
export const mayLoad = (address: string): boolean =>
  isAppAddress(address) ||
  isPaperAddress(address) ||
  viewer.test(address) ||
  /^(data:|devtools:)/.test(address)

/** Denies every permission, asked for or just checked, every device, and every load from off the machine. */
export const guardSession = (session: Session): void => {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !mayLoad(details.url) }))
  session.on('will-download', (event, item) => {
    if (!mayLoad(item.getURL())) event.preventDefault()
  })
}

/** A paper in a window of its own: no bridge, no scripts of ours, only the viewer. */
const paperWindow = {
  title: 'Bracework',
  autoHideMenuBar: true,
  webPreferences: {
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    webSecurity: true,
    plugins: true,
  },
}

const guardContents = (contents: WebContents): void => {
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-frame-navigate', (event) => {
    if (!mayLoad(event.url)) event.preventDefault()
  })
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) =>
    isPaperAddress(url) ? { action: 'allow', overrideBrowserWindowOptions: paperWindow } : { action: 'deny' },
  )
}

/**
 * Guards every page the program will ever have: none may leave for another address, none may open a window but for a
 * paper, none may hold a foreign page.
 */
export const guardPages = (app: Pick<App, 'on'>): void => {
  app.on('web-contents-created', (_event, contents) => guardContents(contents))
}
