import type { BrowserWindow, BrowserWindowConstructorOptions } from 'electron'
import { leastSize, placeOn, type WindowPlace } from './windowPlace.ts'

const firstPlace = placeOn(undefined, [])

/**
 * The window as it opens. plugins is on for one plugin, the built-in PDF viewer that shows a paper; there is no other
 * in Chromium. spellcheck is off because it would fetch its word lists from the network.
 */
export const windowOptions = (preload: string, place?: WindowPlace): BrowserWindowConstructorOptions => ({
  title: 'Bracework',
  ...(place ? { x: place.x, y: place.y } : {}),
  width: place?.width ?? firstPlace.width,
  height: place?.height ?? firstPlace.height,
  minWidth: leastSize.width,
  minHeight: leastSize.height,
  show: false,
  webPreferences: {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    plugins: true,
    spellcheck: false,
  },
})

/**
 * Makes the one window, shown only once its first picture is ready; loading its page is left to the caller, who must
 * know the window before the page's first request. Give it Electron's BrowserWindow, the preload's path, and where it stands.
 */
export const makeWindow = (
  Window: typeof BrowserWindow,
  preload: string,
  place?: WindowPlace,
): BrowserWindow => {
  const window = new Window(windowOptions(preload, place))
  window.once('ready-to-show', () => {
    if (place?.maximised) window.maximize()
    window.show()
  })
  window.on('page-title-updated', (event) => event.preventDefault())
  return window
}

/** Brings the window to the front, from wherever it is. */
export const showWindow = (window: BrowserWindow): void => {
  if (window.isMinimized()) window.restore()
  window.show()
  window.focus()
}
