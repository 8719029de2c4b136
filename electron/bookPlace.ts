import { posix, win32 } from 'node:path'

/** What decides where the book lies: the machine's kind, its environment and the person's own folder. */
export type Machine = {
  platform: NodeJS.Platform
  env: Readonly<Record<string, string | undefined>>
  home: string
}

/**
 * Where the book lies: where BRACEWORK_BOOK says, else the folder this kind of machine keeps such things in.
 * The window and the loopback host use the same place, so both open the same book.
 * On Linux with home /home/a: /home/a/.local/share/Bracework/bracework.book.
 */
export const bookPlace = ({ platform, env, home }: Machine): string => {
  const chosen = env['BRACEWORK_BOOK']
  if (chosen) return chosen
  if (platform === 'win32') {
    return win32.join(env['APPDATA'] ?? win32.join(home, 'AppData', 'Roaming'), 'Bracework', 'bracework.book')
  }
  if (platform === 'darwin') {
    return posix.join(home, 'Library', 'Application Support', 'Bracework', 'bracework.book')
  }
  const dataHome = env['XDG_DATA_HOME']
  const folder = dataHome?.startsWith('/') ? dataHome : posix.join(home, '.local', 'share')
  return posix.join(folder, 'Bracework', 'bracework.book')
}
