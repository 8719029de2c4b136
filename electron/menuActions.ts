import type { BrowserWindow, Clipboard, Shell } from 'electron'
import { programVersion } from '../shared/version.ts'
import { appAddress } from './appProtocol.ts'
import type { MenuActions } from './menu.ts'

/** What the menu's actions work on. logFile is the log's own path: the person never gives it. */
export type ActionParts = {
  window: BrowserWindow
  clipboard: Pick<Clipboard, 'writeText'>
  shell: Pick<Shell, 'showItemInFolder'>
  logFile: string
  platform: NodeJS.Platform
  versions: Readonly<Record<string, string | undefined>>
}

/** What somebody who helps wants to know of a machine, with nothing of the book in it. */
export const detailsOf = ({ platform, versions }: Pick<ActionParts, 'platform' | 'versions'>): string =>
  [
    `Bracework ${programVersion}`,
    `machine ${platform}`,
    `window ${versions['electron'] ?? 'unknown'}, ${versions['chrome'] ?? 'unknown'}`,
  ].join('\n')

/** What the menu's entries do. */
export const menuActions = ({ window, clipboard, shell, logFile, ...machine }: ActionParts): MenuActions => ({
  go: (address) => {
    void window.webContents.loadURL(new URL(address, appAddress).href)
  },
  press: (keyCode) => {
    const modifiers: ('meta' | 'control')[] = /^F\d/.test(keyCode)
      ? []
      : machine.platform === 'darwin'
        ? ['meta']
        : ['control']
    for (const type of ['keyDown', 'keyUp'] as const)
      window.webContents.sendInputEvent({ type, keyCode, modifiers })
  },
  copyDetails: () => {
    void clipboard.writeText(detailsOf(machine))
  },
  showFaultNotes: () => shell.showItemInFolder(logFile),
})
