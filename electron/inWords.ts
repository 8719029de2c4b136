import type { MenuItemConstructorOptions } from 'electron'

/** Says one of the program's own texts in the workshop's language. */
export type Said = (text: string) => string

/** A menu as it stands, each label in the workshop's language; what the system names itself is left to it. */
export const menuInWords = (
  menu: readonly MenuItemConstructorOptions[],
  said: Said,
): MenuItemConstructorOptions[] =>
  menu.map((item) => ({
    ...item,
    ...(item.label !== undefined && { label: said(item.label) }),
    ...(Array.isArray(item.submenu) && { submenu: menuInWords(item.submenu, said) }),
  }))
