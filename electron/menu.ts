import type { MenuItemConstructorOptions } from 'electron'

/** What the menu can do beside Electron's own roles. */
export type MenuActions = {
  /** Opens a place of the program by its address: '#/prices'. */
  go: (address: string) => void
  /** Presses a key of the screen's own, which knows what it means where the person stands. */
  press: (key: string) => void
  copyDetails: () => void
  showFaultNotes: () => void
}

/** The screen itself answers these keys: inside an entry its letters come first, then what was done in the book. */
const edit = ({ press }: MenuActions): MenuItemConstructorOptions => ({
  label: '&Edit',
  submenu: [
    { label: '&Take back', accelerator: 'CmdOrCtrl+Z', registerAccelerator: false, click: () => press('Z') },
    { label: '&Do again', accelerator: 'CmdOrCtrl+Y', registerAccelerator: false, click: () => press('Y') },
    { type: 'separator' },
    { role: 'cut', label: 'Cu&t' },
    { role: 'copy', label: '&Copy' },
    { role: 'paste', label: '&Paste' },
    { role: 'selectAll', label: 'Select &all' },
  ],
})

const view: MenuItemConstructorOptions = {
  label: '&View',
  submenu: [
    { role: 'zoomIn', label: '&Larger' },
    { role: 'zoomOut', label: '&Smaller' },
    { role: 'resetZoom', label: '&Usual size' },
    { type: 'separator' },
    { role: 'togglefullscreen', label: '&Full screen' },
  ],
}

/** The places of the program, as they stand along its top, each with its number for a key. */
const places = [
  ['&Jobs', '#/jobs'],
  ['&Prices', '#/prices'],
  ['&Timber', '#/timber'],
  ['&Workshop', '#/workshop'],
] as const

const goTo = ({ go }: MenuActions): MenuItemConstructorOptions => ({
  label: '&Go to',
  submenu: places.map(([label, address], index) => ({
    label,
    accelerator: `CmdOrCtrl+${index + 1}`,
    click: () => go(address),
  })),
})

/** The screen itself answers Ctrl+N; the menu shows the key and lends a hand to whoever looks for it there. */
const startJob = ({ press }: MenuActions): MenuItemConstructorOptions => ({
  label: '&Start a new job',
  accelerator: 'CmdOrCtrl+N',
  registerAccelerator: false,
  click: () => press('N'),
})

/** Help is a part of the screen and answers F1 itself; so does the list of everything that can be done. */
const onScreen = ({ press }: MenuActions): MenuItemConstructorOptions[] => [
  {
    label: '&Help for where you are',
    accelerator: 'F1',
    registerAccelerator: false,
    click: () => press('F1'),
  },
  { label: '&Do or find…', accelerator: 'F2', registerAccelerator: false, click: () => press('F2') },
  { type: 'separator' },
]

const help = ({ copyDetails, showFaultNotes, ...actions }: MenuActions): MenuItemConstructorOptions => ({
  role: 'help',
  label: '&Help',
  submenu: [
    ...onScreen({ copyDetails, showFaultNotes, ...actions }),
    { label: '&Copy details for whoever helps', click: copyDetails },
    { label: 'Show what &went wrong', click: showFaultNotes },
  ],
})

/**
 * The menu as this kind of machine has it: a Mac's first menu is the program's and its windows have one of their own,
 * elsewhere the book is closed from Book. Keys follow: Cmd on a Mac, Ctrl elsewhere.
 */
export const menuFor = (platform: NodeJS.Platform, actions: MenuActions): MenuItemConstructorOptions[] => {
  const common = [edit(actions), view, goTo(actions)]
  if (platform === 'darwin') {
    const book = { label: '&Book', submenu: [startJob(actions), { role: 'close' as const, label: '&Close' }] }
    return [{ role: 'appMenu' }, book, ...common, { role: 'windowMenu' }, help(actions)]
  }
  const leave: MenuItemConstructorOptions = {
    role: 'quit',
    label: '&Close the book',
    accelerator: platform === 'win32' ? 'Alt+F4' : 'Ctrl+Q',
  }
  return [
    { label: '&Book', submenu: [startJob(actions), { type: 'separator' }, leave] },
    ...common,
    help(actions),
  ]
}
