import { expect, test } from 'vitest'
import { menuInWords } from '../../electron/inWords.ts'
import { menuFor, type MenuActions } from '../../electron/menu.ts'
import { detailsOf, menuActions } from '../../electron/menuActions.ts'
import { placeAt } from '../../renderer/stores/place.ts'
import { programVersion } from '../../shared/version.ts'
import { makeRecorder } from './recorder.ts'

const platforms = ['darwin', 'win32', 'linux'] as const

const still: MenuActions = { go: () => {}, press: () => {}, copyDetails: () => {}, showFaultNotes: () => {} }

const rolesIn = (platform: NodeJS.Platform): string => JSON.stringify(menuFor(platform, still))

type Entry = { label?: string; accelerator?: string; role?: string; click?: () => void }

const entriesOf = (platform: NodeJS.Platform, actions = still): Entry[] =>
  menuFor(platform, actions).flatMap(({ submenu }) => (Array.isArray(submenu) ? (submenu as Entry[]) : []))

test.each(platforms)(
  'on %s text can be cut, copied and pasted, the screen enlarged, and the book left',
  (platform) => {
    for (const role of ['cut', 'copy', 'paste', 'selectAll', 'zoomIn', 'zoomOut', 'resetZoom']) {
      expect(rolesIn(platform)).toContain(`"role":"${role}"`)
    }
    expect(rolesIn(platform)).toContain(platform === 'darwin' ? '"role":"appMenu"' : '"role":"quit"')
  },
)

test.each(platforms)(
  'on %s taking back and doing again are the screen’s own, and the keys its usual ones',
  (platform) => {
    const pressed: string[] = []
    const entries = entriesOf(platform, { ...still, press: (key) => void pressed.push(key) })
    const own = entries.filter(({ label }) => label === '&Take back' || label === '&Do again')
    expect(own.map(({ accelerator }) => accelerator)).toEqual(['CmdOrCtrl+Z', 'CmdOrCtrl+Y'])
    for (const { click } of own) click?.()
    expect(pressed).toEqual(['Z', 'Y'])
  },
)

test.each(platforms)('on %s no menu opens the tools of a programmer', (platform) => {
  expect(rolesIn(platform)).not.toMatch(/toggleDevTools|forceReload|"reload"/i)
})

test('the menus are in this kind of machine’s own order, and the keys its own', () => {
  const labels = (platform: NodeJS.Platform) =>
    menuFor(platform, still).map(({ label, role }) => label?.replace('&', '') ?? role)
  expect(labels('darwin')).toEqual(['appMenu', 'Book', 'Edit', 'View', 'Go to', 'windowMenu', 'Help'])
  expect(labels('win32')).toEqual(['Book', 'Edit', 'View', 'Go to', 'Help'])
  expect(labels('linux')).toEqual(labels('win32'))
  const leave = (platform: NodeJS.Platform) =>
    entriesOf(platform).find(({ role }) => role === 'quit')?.accelerator
  expect([leave('win32'), leave('linux')]).toEqual(['Alt+F4', 'Ctrl+Q'])
})

test.each(platforms)('on %s no key stands for two things', (platform) => {
  const keys = entriesOf(platform).flatMap(({ accelerator }) => (accelerator ? [accelerator] : []))
  expect(keys.length).toBeGreaterThanOrEqual(5)
  expect(new Set(keys).size).toBe(keys.length)
})

test('each place of the menu is one the program has, and a press goes there', () => {
  const gone: string[] = []
  for (const { accelerator, click } of entriesOf('linux', { ...still, go: (to) => void gone.push(to) }))
    if (accelerator?.startsWith('CmdOrCtrl+') && /\d$/.test(accelerator)) click?.()
  expect(gone.map((address) => placeAt(address).name)).toEqual(['jobs', 'prices', 'timber', 'workshop'])
})

const acting = (platform: NodeJS.Platform) => {
  const contents = makeRecorder({ loadURL: async () => undefined })
  const keys: unknown[] = []
  const loaded: string[] = []
  const webContents = new Proxy(contents.object as object, {
    get: (_target, name) =>
      name === 'loadURL'
        ? async (address: string) => void loaded.push(address)
        : (given: unknown) => void keys.push(given),
  })
  const clipboard = makeRecorder()
  const shell = makeRecorder()
  const actions = menuActions({
    window: { webContents } as never,
    clipboard: clipboard.object,
    shell: shell.object,
    logFile: '/logs/bracework.log',
    platform,
    versions: { electron: '45.4.1', chrome: '156.0.1' },
  })
  return { actions, keys, loaded, clipboard, shell }
}

test.each([
  ['darwin', 'meta'],
  ['win32', 'control'],
] as const)('on %s a new job is started by the screen’s own key, with %s', (platform, modifier) => {
  const { actions, keys } = acting(platform)
  actions.press('N')
  expect(keys).toEqual([
    { type: 'keyDown', keyCode: 'N', modifiers: [modifier] },
    { type: 'keyUp', keyCode: 'N', modifiers: [modifier] },
  ])
})

test('the menu never leaves the program’s own page, and shows the log by its place alone', () => {
  const { actions, loaded, clipboard, shell } = acting('linux')
  actions.go('#/prices')
  actions.showFaultNotes()
  actions.copyDetails()
  expect(loaded).toEqual(['app://bracework/#/prices'])
  expect(shell.calls).toEqual([{ name: 'showItemInFolder', args: ['/logs/bracework.log'] }])
  expect(clipboard.calls).toEqual([
    {
      name: 'writeText',
      args: [`Bracework ${programVersion}\nmachine linux\nwindow 45.4.1, 156.0.1`],
    },
  ])
  expect(detailsOf({ platform: 'win32', versions: {} })).toContain('window unknown')
})

test('every label of the menu is said in the workshop’s language, and nothing else of it changes', () => {
  const plain = menuFor('linux', still)
  const labelsIn = (menu: unknown): string[] => JSON.stringify(menu).match(/"label":"[^"]*"/g) ?? []
  const told = menuInWords(plain, (text) => `<${text}>`)
  expect(labelsIn(plain).length).toBeGreaterThan(15)
  expect(labelsIn(told)).toEqual(labelsIn(plain).map((one) => one.replace(/:"(.*)"$/, ':"<$1>"')))
  expect(menuInWords(plain, (text) => text)).toEqual(plain)
})
