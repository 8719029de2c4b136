import type { Dialog } from 'electron'

/** Asks for a folder to put a copy of the book in, in the system's own window. null when none was chosen. */
export async function chosenFolder(dialog: Pick<Dialog, 'showOpenDialog'>): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog({
    title: 'Where shall the copy go?',
    buttonLabel: 'Put the copy here',
    properties: ['openDirectory', 'createDirectory'],
  })
  return canceled ? null : (filePaths[0] ?? null)
}
