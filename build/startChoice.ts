/** What a machine has to show the program with. */
export type Machine = {
  platform: NodeJS.Platform
  env: Readonly<Record<string, string | undefined>>
  /** Node-API level of the Node that runs this: the book's store needs 10 (Node 22.14 or newer). */
  napi: number
  /** Path of the Electron program, once it is on the machine. */
  electron: string | undefined
}

/** How the program is shown, or why it can't run. `say` is one line for the person who started it. */
export type Choice =
  | { show: 'refuse'; say: string }
  | { show: 'window'; electron: string }
  | { show: 'fetch'; say: string }
  | { show: 'browser'; say: string }

/** Whether there is a screen to open a window on. */
export const hasScreen = ({ platform, env }: Pick<Machine, 'platform' | 'env'>): boolean =>
  platform === 'win32' || platform === 'darwin' || Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY'])

/**
 * The window where there is a screen and Electron; a fetch of Electron where there is only a screen (once: mayFetch is
 * false after it failed); otherwise the same screens in a browser.
 */
export const chooseStart = (machine: Machine, mayFetch: boolean): Choice => {
  if (machine.napi < 10) {
    return {
      show: 'refuse',
      say: 'Bracework needs Node 22.14 or newer. Run "npm install" here, then "npm start".',
    }
  }
  if (!hasScreen(machine)) {
    return { show: 'browser', say: 'No screen for a window here, so Bracework opens in a browser.' }
  }
  if (machine.electron !== undefined) return { show: 'window', electron: machine.electron }
  if (mayFetch) return { show: 'fetch', say: 'Fetching Electron for the window (once, about 120 MB) ...' }
  return { show: 'browser', say: 'Electron can’t be had here, so Bracework opens in a browser.' }
}
