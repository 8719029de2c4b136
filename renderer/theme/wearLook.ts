import { readLook, usualLook, wornBy, type Look } from './look.ts'

const remembered = 'bracework.look'
const rememberedEarlier = 'bracework.light'

const asks = {
  dark: '(prefers-color-scheme: dark)',
  moreContrast: '(prefers-contrast: more)',
  coarse: '(pointer: coarse)',
} as const

const asked = (question: keyof typeof asks): boolean => window.matchMedia(asks[question]).matches

/** The look kept on this machine. */
export const keptLook = (): Look =>
  readLook(window.localStorage.getItem(remembered), window.localStorage.getItem(rememberedEarlier))

/** Keeps a look on this machine. */
export const keepLook = (look: Look): void => window.localStorage.setItem(remembered, JSON.stringify(look))

/** Puts a look on the page: its board, its contrast, what works it, and the size of its letters. */
export function wearLook(look: Look): void {
  const worn = wornBy(look, {
    dark: asked('dark'),
    moreContrast: asked('moreContrast'),
    coarse: asked('coarse'),
  })
  const root = document.documentElement
  root.dataset['theme'] = worn.theme
  root.dataset['contrast'] = worn.contrast
  root.dataset['hand'] = worn.hand
  // In shares of the browser's own size, so that whoever set that larger keeps it.
  root.style.fontSize =
    worn.letters === usualLook.letters ? '' : `${(worn.letters / usualLook.letters) * 100}%`
}

/** Calls back when the computer's own wishes change, or another window of this machine has kept another look. */
export function watchLook(changed: () => void): void {
  for (const question of Object.values(asks)) window.matchMedia(question).addEventListener('change', changed)
  window.addEventListener('storage', ({ key }) => {
    if (key === remembered) changed()
  })
}
