import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import type { BrowserWindow, Screen } from 'electron'
import { placeOn, readPlace, type WindowPlace } from './windowPlace.ts'

/** The place the window last had; undefined where none was noted, or none that can be read. */
export const notedPlace = (path: string): WindowPlace | undefined => {
  try {
    return readPlace(readFileSync(path, 'utf8'))
  } catch {
    return undefined
  }
}

/** Notes the window's place for the next start. A disk that doesn't take it is no reason to stop: it is only told. */
export const notePlace = (path: string, place: WindowPlace, log: (line: string) => void): void => {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(`${path}.new`, JSON.stringify(place))
    renameSync(`${path}.new`, path)
  } catch {
    log('the window’s place can’t be noted')
  }
}

const areasOf = (screen: Pick<Screen, 'getAllDisplays' | 'getPrimaryDisplay'>) => {
  const first = screen.getPrimaryDisplay()
  const others = screen.getAllDisplays().filter(({ id }) => id !== first.id)
  return [first, ...others].map(({ workArea }) => workArea)
}

/** Where the window opens on the displays there are now. */
export const openingPlace = (
  path: string,
  screen: Pick<Screen, 'getAllDisplays' | 'getPrimaryDisplay'>,
): WindowPlace => placeOn(notedPlace(path), areasOf(screen))

const placeOf = (window: BrowserWindow): WindowPlace => ({
  ...window.getNormalBounds(),
  maximised: window.isMaximized(),
})

/**
 * Notes the window's place as it closes, and brings the window back into view when a display is taken away or changed
 * under it.
 */
export const keepPlace = (
  window: BrowserWindow,
  screen: Screen,
  { path, log }: { path: string; log: (line: string) => void },
): void => {
  window.on('close', () => notePlace(path, placeOf(window), log))
  const back = (): void => {
    if (window.isDestroyed() || window.isMaximized() || window.isFullScreen()) return
    const { maximised: _unchanged, ...area } = placeOn(placeOf(window), areasOf(screen))
    window.setBounds(area)
  }
  screen.on('display-removed', back)
  screen.on('display-metrics-changed', back)
}
