import { setTimeout as pause } from 'node:timers/promises'
import type { BrowserWindow, BrowserWindowConstructorOptions, WebContentsPrintOptions } from 'electron'
import { appAddress } from '../appProtocol.ts'

/** A paper on its way to the printer: which, how many, and its sheet, mm. */
export type PaperToPrint = { sha256: string; copies: number; width: number; height: number }

/** How it ended: the person went through with it, left it, or the printer refused, with what it said. */
export type Printed = { ended: 'printed' | 'left' } | { ended: 'failed'; said: string }

/** Sends a paper to the printer by the system's own print window. */
export type PrintPaper = (paper: PaperToPrint) => Promise<Printed>

/** Where the window's own scheme gives a paper of the shelf. */
export const paperAddress = (sha256: string): string => `${appAddress}paper/${sha256}.pdf`

/** The hidden window that holds the paper: the built-in viewer, no preload, no scripts of ours. */
export const paperWindowOptions: BrowserWindowConstructorOptions = {
  show: false,
  title: 'Bracework',
  webPreferences: {
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    plugins: true,
    spellcheck: false,
  },
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.5
const thousandths = (mm: number): number => Math.round(mm * 1000)

/** The sheet by its name where it has one, otherwise by its size in thousandths of a millimetre. */
export function pageSizeOf({
  width,
  height,
}: Pick<PaperToPrint, 'width' | 'height'>): WebContentsPrintOptions['pageSize'] {
  if (near(width, 210) && near(height, 297)) return 'A4'
  if (near(width, 215.9) && near(height, 279.4)) return 'Letter'
  return { width: thousandths(width), height: thousandths(height) }
}

/** At actual size, to the sheet's edge (the paper has its own margins), after the person has chosen the printer. */
export const printOptions = (paper: PaperToPrint): WebContentsPrintOptions => ({
  silent: false,
  printBackground: true,
  margins: { marginType: 'none' },
  scaleFactor: 100,
  pagesPerSheet: 1,
  collate: true,
  copies: paper.copies,
  pageSize: pageSizeOf(paper),
})

const printed = (window: BrowserWindow, paper: PaperToPrint): Promise<Printed> =>
  new Promise((resolve) => {
    window.webContents.print(printOptions(paper), (success, reason) => {
      if (success) resolve({ ended: 'printed' })
      else if (/cancel/i.test(reason)) resolve({ ended: 'left' })
      else resolve({ ended: 'failed', said: reason })
    })
  })

/** The viewer paints a moment after it says it has loaded, and would print an empty sheet before. */
const settleMs = 700

/**
 * Prints by way of a hidden window that shows the paper's own bytes. Give it Electron's BrowserWindow. The window is gone when it has ended,
 * however that was.
 */
export const printPaperWith =
  (Window: typeof BrowserWindow, settle = settleMs): PrintPaper =>
  async (paper) => {
    const window = new Window(paperWindowOptions)
    try {
      await window.loadURL(paperAddress(paper.sha256))
      await pause(settle)
      return await printed(window, paper)
    } finally {
      window.destroy()
    }
  }
