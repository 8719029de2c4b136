import type { IpcMain, IpcMainInvokeEvent } from 'electron'
import { requestNames, type RequestName } from '../shared/contract.ts'
import { bad, type Result } from '../shared/problem.ts'
import { isAppAddress } from './appProtocol.ts'
import { isPlainPayload } from './plainPayload.ts'

/** Answers a request; the same function answers for the loopback host. It checks the payload itself. */
export type Answer = (name: RequestName, payload: unknown) => Promise<Result<unknown>>

/**
 * Whether a call comes from our own page: the outermost frame of our window, still at our address. A frame that is
 * gone has no senderFrame, and is refused.
 */
export const isOurs = (event: IpcMainInvokeEvent, windowId: number | undefined): boolean => {
  const frame = event.senderFrame
  if (!frame || frame.parent !== null) return false
  return event.sender.id === windowId && isAppAddress(frame.url)
}

/** What the listening needs: Electron's ipcMain, the id of our window's page (known once it is open), the answers. */
export type Listening = {
  ipcMain: Pick<IpcMain, 'handle'>
  windowId: () => number | undefined
  answer: Answer
  log: (line: string) => void
}

/** The gate every call passes: who sends it, and what it is made of. What each request takes is read by its own parser after it. */
const faultOf = (
  event: IpcMainInvokeEvent,
  windowId: number | undefined,
  payload: unknown,
): string | undefined => {
  if (!isOurs(event, windowId)) return 'not from our window'
  return isPlainPayload(payload) ? undefined : 'not what a request is made of'
}

/** Listens for every request of the contract, one channel a request. What the gate doesn't let by is refused, not answered. */
export const listenForRequests = ({ ipcMain, windowId, answer, log }: Listening): void => {
  for (const name of requestNames) {
    ipcMain.handle(name, (event, payload: unknown) => {
      const fault = faultOf(event, windowId(), payload)
      if (fault === undefined) return answer(name, payload)
      log(`refused ${name}: ${fault}`)
      return bad({ code: 'refused', field: '', message: 'Bracework refused this' })
    })
  }
}
