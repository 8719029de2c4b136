import type { Dialog } from 'electron'

/** Asks for a folder in the system's own window: for a copy of the book, or the whole book as files. null when none was chosen. */
export async function chosenFolder(dialog: Pick<Dialog, 'showOpenDialog'>): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog({
    title: 'Choose a folder',
    buttonLabel: 'This folder',
    properties: ['openDirectory', 'createDirectory'],
  })
  return canceled ? null : (filePaths[0] ?? null)
}
