import type {
  BackedUp,
  BookCopy,
  CopyReason,
  InsideCopy,
  KeepingState,
  PapersGoneOver,
  Salvaged,
} from '../../shared/keeping/keepingModel.ts'

/**
 * How the book is kept, as the requests ask for it: its copies, their way out of the house, what can be done when it is damaged.
 * Everything that changes files is done one thing at a time. All throw BookProblem with a sentence for the person.
 */
export type Keeping = {
  state: () => KeepingState
  /** Looks a copy through and says what is in it. */
  inside: (name: string) => Promise<InsideCopy>
  /** Makes a checked copy beside the book; call it before anything that could go wrong (an import). */
  copy: (why: CopyReason) => Promise<BookCopy>
  /** Does other work on the book's files in its turn among these: while no copy is made and none brought back. The book counts as changed from then on. */
  inTurn: <T>(work: () => Promise<T>) => Promise<T>
  restore: (name: string) => Promise<KeepingState>
  salvage: () => Promise<Salvaged>
  fresh: () => Promise<KeepingState>
  again: () => Promise<KeepingState>
  chooseFolder: () => Promise<string | null>
  backUp: (folder: string) => Promise<BackedUp>
  putOff: () => KeepingState
  putAway: () => KeepingState
  goOver: () => Promise<PapersGoneOver>
  putBack: (paperId: number) => Promise<PapersGoneOver>
}
