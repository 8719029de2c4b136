import type { BrowserWindow, BrowserWindowConstructorOptions } from 'electron'

/**
 * The window as it opens. plugins is on for one plugin, the built-in PDF viewer that shows a paper; there is no other
 * in Chromium. spellcheck is off because it would fetch its word lists from the network.
 */
export const windowOptions = (preload: string): BrowserWindowConstructorOptions => ({
  title: 'Bracework',
  width: 1360,
  height: 860,
  minWidth: 900,
  minHeight: 560,
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
 * know the window before the page's first request. Give it Electron's BrowserWindow and the preload's path.
 */
export const makeWindow = (Window: typeof BrowserWindow, preload: string): BrowserWindow => {
  const window = new Window(windowOptions(preload))
  window.once('ready-to-show', () => window.show())
  window.on('page-title-updated', (event) => event.preventDefault())
  return window
}

/** Brings the window to the front, from wherever it is. */
export const showWindow = (window: BrowserWindow): void => {
  if (window.isMinimized()) window.restore()
  window.show()
  window.focus()
}
