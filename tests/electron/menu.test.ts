import { expect, test } from 'vitest'
import { menuFor } from '../../electron/menu.ts'

const rolesIn = (platform: NodeJS.Platform): string => JSON.stringify(menuFor(platform))

test.each(['darwin', 'win32', 'linux'] as const)(
  'on %s text can be cut, copied and pasted, the screen enlarged, and the book left',
  (platform) => {
    for (const role of ['undo', 'cut', 'copy', 'paste', 'selectAll', 'zoomIn', 'zoomOut', 'resetZoom']) {
      expect(rolesIn(platform)).toContain(`"role":"${role}"`)
    }
    expect(rolesIn(platform)).toContain(platform === 'darwin' ? '"role":"appMenu"' : '"role":"quit"')
  },
)

test.each(['darwin', 'win32', 'linux'] as const)(
  'on %s no menu opens the tools of a programmer',
  (platform) => {
    expect(rolesIn(platform)).not.toMatch(/toggleDevTools|forceReload|"reload"/i)
  },
)
