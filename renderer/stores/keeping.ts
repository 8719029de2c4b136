import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { BackedUp, InsideCopy, KeepingState } from '../../shared/keeping/keepingModel.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'
import { beginAgain, followOtherWindows, tellOtherWindows } from '../otherWindows.ts'

/** How the book is kept: its copies, what can be done when it can't be opened, what is to be remembered. */
export const useKeepingStore = defineStore('keeping', () => {
  const state = ref<KeepingState | null>(null)
  /** Whether the book has answered at all, whatever it said. */
  const known = ref(false)
  const trouble = ref('')
  /** What is being done, in words; '' when nothing is. */
  const doing = ref('')
  followOtherWindows()

  const follow = (reply: Result<KeepingState>): void => {
    if (reply.ok) state.value = reply.value
    known.value = true
    trouble.value = sentences(reply)
  }
  const read = async (): Promise<void> => follow(await request('keeping.state', {}))

  /** Does one thing, saying so meanwhile; the reply's sentence, if it failed, stands in `trouble`. */
  async function doOne<T>(words: string, work: () => Promise<Result<T>>): Promise<T | null> {
    if (doing.value !== '') return null
    doing.value = words
    trouble.value = ''
    const reply = await work()
    doing.value = ''
    trouble.value = sentences(reply)
    return reply.ok ? reply.value : null
  }

  /** After another book was opened every screen starts over, here and in the other windows. */
  async function openOther<T>(words: string, work: () => Promise<Result<T>>): Promise<void> {
    const done = await doOne(words, work)
    if (done === null) return
    tellOtherWindows()
    beginAgain()
  }

  const restore = (name: string) => openOther('Opening the copy…', () => request('keeping.restore', { name }))
  const salvage = () => openOther('Reading out what can be read…', () => request('keeping.salvage', {}))
  const fresh = () => openOther('Beginning a fresh book…', () => request('keeping.fresh', {}))

  async function again(): Promise<void> {
    const next = await doOne('Trying again…', () => request('keeping.again', {}))
    if (next && !next.trouble) beginAgain()
    else if (next) state.value = next
  }

  const inside = (name: string): Promise<Result<InsideCopy>> => request('keeping.inside', { name })

  async function copyNow(): Promise<void> {
    if (await doOne('Copying…', () => request('keeping.copy', {}))) await read()
  }

  async function backUp(folder: string): Promise<BackedUp | null> {
    const done = await doOne('Copying, and reading it back…', () => request('keeping.backUp', { folder }))
    if (done) await read()
    return done
  }

  async function chooseFolder(): Promise<string | null> {
    const chosen = await doOne('Choosing a folder…', () => request('keeping.chooseFolder', {}))
    return chosen?.folder ?? null
  }

  async function goOver(): Promise<void> {
    if (await doOne('Going over the papers…', () => request('keeping.goOver', {}))) await read()
  }

  async function putBack(paperId: number): Promise<void> {
    if (await doOne('Putting the paper back…', () => request('keeping.putBack', { paperId }))) await read()
  }

  const putOff = async () => follow(await request('keeping.putOff', {}))
  const putAway = async () => follow(await request('keeping.putAway', {}))

  return {
    ...{ state, known, trouble, doing, read, restore, salvage, fresh, again },
    ...{ inside, copyNow, backUp, chooseFolder, goOver, putBack, putOff, putAway },
  }
})
