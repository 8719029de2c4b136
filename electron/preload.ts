import { contextBridge, ipcRenderer } from 'electron'
import { carriedNames } from '../shared/requestNames.ts'

/** One function a request, each bound to its own name: the page can't reach any other channel. */
const bridge = Object.fromEntries(
  carriedNames.map((name) => [
    name,
    (payload: unknown): Promise<unknown> => ipcRenderer.invoke(name, payload),
  ]),
)

contextBridge.exposeInMainWorld('bracework', bridge)
