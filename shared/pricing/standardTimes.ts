import type { Operation, StandardTimes } from './needs.ts'

/**
 * Minutes for one of each operation, to start from: invented, of the size that is common practice, to be set by the workshop from its
 * own record. A finish is by the square metre and coat; a tenon has its mortice in it, a hinge its bolts.
 */
export const standardTimes: StandardTimes = {
  'set up': 30,
  cut: 2,
  rip: 4,
  bevel: 3,
  board: 4,
  fixing: 0.75,
  notch: 12,
  tenon: 25,
  'shaped top board': 6,
  hinge: 12,
  lock: 35,
  latch: 20,
  bolt: 12,
  'finish square metre': 6,
  'site visit': 45,
  'hang leaf': 75,
}

/** What each operation is called on a line of an estimate. */
export const operationWords: Record<Operation, string> = {
  'set up': 'Setting up',
  cut: 'Square cuts',
  rip: 'Rips',
  bevel: 'Angled cuts',
  board: 'Fitting boards',
  fixing: 'Driving fixings',
  notch: 'Notches',
  tenon: 'Tenons and mortices',
  'shaped top board': 'Shaped ends',
  hinge: 'Fitting hinges',
  lock: 'Fitting locks',
  latch: 'Fitting latches',
  bolt: 'Fitting bolts, handles and the like',
  'finish square metre': 'Putting on the finish',
  'site visit': 'Site visits',
  'hang leaf': 'Hanging',
}
