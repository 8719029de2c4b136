import type { Fill, Pen } from '../../shared/drawing/drawing.ts'

/** Colours of a picture that leaves the program: always light paper, whatever the screen's own are. */
export const paperColour = '#fffdf8'
const ink = '#22231f'
const quiet = '#45443d'

export const fillColours: Record<Fill, string> = {
  none: 'none',
  board: '#f3e9d2',
  ledge: '#e6d3ac',
  brace: '#dcc394',
  cut: '#f3e9d2',
  metal: '#d3d5d6',
  paper: paperColour,
  ink,
  accent: '#17466f',
}

const quietPens: readonly Pen[] = ['dimension', 'tick', 'centre', 'grain', 'hatch']
export const penColour = (pen: Pen): string =>
  pen === 'thrust' ? fillColours.accent : quietPens.includes(pen) ? quiet : ink
export const wordColour = ink

/** The program's own face first, then faces that are found nearly everywhere. */
export const pictureFaces = "'IBM Plex Sans', 'Segoe UI', 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif"
