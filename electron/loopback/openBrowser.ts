import { spawn } from 'node:child_process'

/** The command that opens an address in this machine's own browser, or undefined where there is no screen to show it. */
export const browserCommand = (
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
): readonly [command: string, ...args: string[]] | undefined => {
  if (platform === 'darwin') return ['open']
  if (platform === 'win32') return ['cmd', '/c', 'start', '']
  return env['DISPLAY'] || env['WAYLAND_DISPLAY'] ? ['xdg-open'] : undefined
}

/** Opens the address, and leaves the browser to itself. Where that fails the printed address is still there to use. */
export const openBrowser = (address: string, platform = process.platform, env = process.env): void => {
  const command = browserCommand(platform, env)
  if (!command) return
  const [program, ...args] = command
  const child = spawn(program, [...args, address], { detached: true, stdio: 'ignore' })
  child.on('error', () => process.stderr.write('No browser could be opened: open the address yourself.\n'))
  child.unref()
}
