import type { MenuItemConstructorOptions } from 'electron'

const edit: MenuItemConstructorOptions = {
  label: '&Edit',
  submenu: [
    { role: 'undo', label: '&Undo' },
    { role: 'redo', label: '&Redo' },
    { type: 'separator' },
    { role: 'cut', label: 'Cu&t' },
    { role: 'copy', label: '&Copy' },
    { role: 'paste', label: '&Paste' },
    { role: 'selectAll', label: 'Select &all' },
  ],
}

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

/** The menu as this kind of machine has it: a Mac's first menu is the program's, elsewhere the book is closed from Book. */
export const menuFor = (platform: NodeJS.Platform): MenuItemConstructorOptions[] => {
  if (platform === 'darwin') return [{ role: 'appMenu' }, edit, view, { role: 'windowMenu' }]
  return [{ label: '&Book', submenu: [{ role: 'quit', label: '&Close the book' }] }, edit, view]
}
