/** Where the book's folder lies: on this machine, on another one, or in a folder that is kept the same as others elsewhere. */
export type FolderKind = 'own' | 'network' | 'shared'

const warnings: Readonly<Record<FolderKind, string | undefined>> = {
  own: undefined,
  network:
    'The job book lies on another machine. If the line breaks while it is written, or two machines open it at once, it can be spoilt. Keep it on this machine and put copies over there.',
  shared:
    'The job book lies in a folder that is kept the same on other machines. An older page of it can come back from there. Keep it in a folder of this machine alone and put copies over there.',
}

/** What the person is told of the book's folder, with the way out; undefined for an ordinary one. */
export const folderWarning = (kind: FolderKind): string | undefined => warnings[kind]
