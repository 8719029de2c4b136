/** Light or dark, or as the computer is set. */
export const boards = ['system', 'light', 'dark'] as const
/** How strong ink and lines stand out: as the computer is set, as usual, or as strong as can be. */
export const contrasts = ['system', 'usual', 'more'] as const
/** What works the screen: as the computer says, a mouse, or fingers, for which everything pressed is larger. */
export const hands = ['system', 'mouse', 'fingers'] as const
/** The size of the letters in the body of a screen, px at 100 %; everything else grows with it. */
export const letterSizes = [16, 17, 18, 20, 22] as const

/** How the screens look, as the person chose. Kept with this screen, not in the book: another screen may want another. */
export type Look = {
  board: (typeof boards)[number]
  contrast: (typeof contrasts)[number]
  hand: (typeof hands)[number]
  letters: (typeof letterSizes)[number]
}

/** What the computer asks for itself. */
export type Asked = { dark: boolean; moreContrast: boolean; coarse: boolean }

/** What is worn, once what was left to the computer has been settled. */
export type Worn = {
  theme: 'light' | 'dark'
  contrast: 'usual' | 'more'
  hand: 'mouse' | 'fingers'
  letters: number
}

export const usualLook: Look = { board: 'system', contrast: 'system', hand: 'system', letters: 16 }

const oneOf = <T>(known: readonly T[], given: unknown, otherwise: T): T =>
  known.find((one) => one === given) ?? otherwise

const heldIn = (words: string): Partial<Record<keyof Look, unknown>> => {
  try {
    const held: unknown = JSON.parse(words)
    return typeof held === 'object' && held !== null ? held : {}
  } catch {
    return {}
  }
}

/** Reads a look that was kept; whatever isn't understood in it is as usual. An earlier Bracework kept one word, light or dark. */
export function readLook(kept: string | null, earlier: string | null = null): Look {
  const held = kept === null ? { board: earlier } : heldIn(kept)
  return {
    board: oneOf(boards, held.board, usualLook.board),
    contrast: oneOf(contrasts, held.contrast, usualLook.contrast),
    hand: oneOf(hands, held.hand, usualLook.hand),
    letters: oneOf(letterSizes, held.letters, usualLook.letters),
  }
}

/** Settles a look against what the computer asks for. */
export function wornBy(look: Look, asked: Asked): Worn {
  return {
    theme: look.board === 'system' ? (asked.dark ? 'dark' : 'light') : look.board,
    contrast: look.contrast === 'system' ? (asked.moreContrast ? 'more' : 'usual') : look.contrast,
    hand: look.hand === 'system' ? (asked.coarse ? 'fingers' : 'mouse') : look.hand,
    letters: look.letters,
  }
}
