/** What a disk's name leads to: a file's contents, or a folder with names as the program sees them and as the disk surely has them. */
export type Node<File> = File | Folder<File>
export type Folder<File> = { names: Map<string, Node<File>>; sure: Map<string, Node<File>> }

/** One change of names, whole or not at all: what each name leads to from then on; undefined: to nothing. */
export type NameChange<File> = { folder: Folder<File>; name: string; node: Node<File> | undefined }[]

/** A folder that has nothing in it yet. */
export const emptyFolder = <File>(): Folder<File> => ({ names: new Map(), sure: new Map() })

/** Whether a name leads to a folder. */
export const isFolder = <File extends object>(node: Node<File> | undefined): node is Folder<File> =>
  node !== undefined && 'names' in node

/** Sets names of one view of the folders: as the program sees them, or another. */
export function applied<File>(
  change: NameChange<File>,
  view: (folder: Folder<File>) => Map<string, Node<File>>,
): void {
  for (const { folder, name, node } of change)
    if (node === undefined) view(folder).delete(name)
    else view(folder).set(name, node)
}

/** Parts what waits into what one folder's forcing brings with it, and the rest: the folder's own changes, and those they came after in other folders. */
export function forcedWith<File>(
  folder: Folder<File>,
  waiting: readonly NameChange<File>[],
): { forced: NameChange<File>[]; rest: NameChange<File>[] } {
  const reached = new Set([folder])
  const forced: NameChange<File>[] = []
  const rest: NameChange<File>[] = []
  for (const change of waiting.toReversed()) {
    const goes = change.some((one) => reached.has(one.folder))
    if (goes) for (const one of change) reached.add(one.folder)
    ;(goes ? forced : rest).unshift(change)
  }
  return { forced, rest }
}

/**
 * Those of the waiting changes that reach the disk when each folder keeps so many of its own, the first of them: a change that touches two folders
 * is kept by both or by none, and none is kept that came after one which wasn't.
 */
export function keptOf<File>(
  waiting: readonly NameChange<File>[],
  keeps: (own: number) => number,
): NameChange<File>[] {
  const own = new Map<Folder<File>, number>()
  for (const change of waiting) for (const { folder } of change) own.set(folder, (own.get(folder) ?? 0) + 1)
  const left = new Map([...own].map(([folder, count]) => [folder, keeps(count)]))
  return waiting.filter((change) => {
    const kept = change.every(({ folder }) => (left.get(folder) ?? 0) > 0)
    for (const { folder } of change) left.set(folder, kept ? (left.get(folder) ?? 0) - 1 : 0)
    return kept
  })
}
