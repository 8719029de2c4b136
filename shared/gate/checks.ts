/** A stop means the gate can't be made as entered; a caution is printed on the card; a note is worth knowing. */
export type CheckLevel = 'stop' | 'caution' | 'note'

/**
 * One thing found when the gate was checked. figures lists the ids of the worked figures it rests on,
 * remedy says what to change. field is the spec path of the entry to change first ('' when there is none).
 */
export type Check = {
  id: string
  level: CheckLevel
  message: string
  figures: string[]
  remedy: string
  field: string
}

export const isStop = (check: Check): boolean => check.level === 'stop'
