/**
 * A row of the cut list. part is 'board', 'ledge', 'brace' (or 'lower brace' and the like when they differ); marks name the
 * single pieces; length in mm rounded once to 0.5 (a quarter goes up): boards finished, ledges long edge, braces long point
 * to long point. ends says how both ends are cut, with angles. blank is the length to cut first.
 */
export type CutRow = {
  part: string
  marks: string[]
  section: string
  thickness: number
  width: number
  quantity: number
  length: number
  blank: number
  ends: string
}
