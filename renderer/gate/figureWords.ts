import { capital } from '../format.ts'

const own: Record<string, string> = {
  width: 'Width',
  height: 'Height',
  boards: 'Cover of a board',
  gap: 'Gap between boards',
  'foot to bottom ledge': 'Foot to the bottom ledge',
  'hanging inset': 'Ledge in from the hanging edge',
  'closing inset': 'Ledge in from the closing edge',
}

/** What a dimension of the drawing is called, by its part. ledges: those that the leaf has, bottom up. 'dimension bay 2' is 'Middle ledge to top ledge'. */
export function figureWord(part: string, ledges: readonly string[]): string {
  const called = part.replace(/^dimension /, '')
  const bay = /^bay (\d+)$/.exec(called)
  if (bay) {
    const [under, over] = [ledges[Number(bay[1]) - 1], ledges[Number(bay[1])]]
    return `${capital(under ?? 'ledge')} ledge to ${over ? `${over} ledge` : 'the top'}`
  }
  const board = /^board (\d+)$/.exec(called)
  if (board) return `Board ${board[1]}`
  return own[called] ?? capital(called)
}
