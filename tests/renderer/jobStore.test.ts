import { afterEach, describe, expect, it } from 'vitest'
import { applyChanges } from '../../shared/job/applyChange.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import { carrier, job, pause } from './standIn.ts'

describe('the job on the board', () => {
  afterEach(() => useJobStore().close())

  it('shows an edit at once and has it in the book within half a second', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    store.edit([{ path: 'spec.size.width', value: 985, typed: '985' }])
    expect(store.job?.entry.spec.size).toMatchObject({ width: 985 })
    expect(book.standing().entry.spec.size).toMatchObject({ width: null })
    await pause(450)
    expect(book.standing().entry.spec.size).toMatchObject({ width: 985 })
    expect(book.standing().entry.typed).toEqual({ 'size.width': '985' })
    expect(store.pending).toEqual([])
  })

  it('sends the keys of one entry as one change, with what stood there before the first key', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    for (const words of ['9', '98', '985'])
      store.edit([{ path: 'spec.size.width', value: Number(words), typed: words }])
    await pause(450)
    expect(book.asked).toEqual([[{ path: 'spec.size.width', value: 985, typed: '985', was: null }]])
  })

  it('holds edits while the book doesn’t answer, says so, and sends them when it does', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    book.silent = true
    store.edit([{ path: 'title', value: 'Yard door' }])
    await pause(450)
    expect(store.trouble).toContain('isn’t answering')
    store.edit([{ path: 'notes', value: 'Dog in the yard' }])
    expect(store.job?.title).toBe('Yard door')
    book.silent = false
    await store.send()
    expect(book.standing().title).toBe('Yard door')
    expect(book.standing().notes).toBe('Dog in the yard')
    expect(store.trouble).toBe('')
  })

  it('lays edits by when a job is put away unanswered, and sends them when it is next opened', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    book.silent = true
    store.edit([{ path: 'title', value: 'Yard door' }])
    await store.close()
    book.silent = false
    await store.open(7)
    expect(store.job?.title).toBe('Yard door')
    await pause(50)
    expect(book.standing().title).toBe('Yard door')
  })

  it('tells both values when another window wrote in the same entry, and puts theirs back when asked', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    const theirs = applyChanges(book.standing(), [{ path: 'title', value: 'Hatch' }])
    if (!theirs.ok) throw new Error('the other window was refused')
    book.put({ ...theirs.value.job, version: 2 })
    store.edit([{ path: 'title', value: 'Yard door' }])
    await store.send()
    const overlap = store.overlaps[0]
    expect(overlap).toEqual({ path: 'title', theirs: 'Hatch', mine: 'Yard door' })
    if (overlap) store.putTheirsBack(overlap)
    await store.send()
    expect(book.standing().title).toBe('Hatch')
    expect(store.overlaps).toEqual([])
  })

  it('takes another window’s newer job when no edit of its own is on the way', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    book.put({ ...book.standing(), title: 'Hatch', version: 5 })
    await store.look()
    expect(store.job?.title).toBe('Hatch')
  })

  it('refuses a change that would leave no gate, beside its entry, and sends nothing', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    store.edit([{ path: 'spec.construction', value: 'ledged' }])
    expect(store.refused[0]?.path).toBe('spec.construction')
    expect(store.job?.entry.spec.construction).toBe('ledged-braced')
    await pause(400)
    expect(book.asked).toEqual([])
  })

  it('takes a construction and its brace as one change', async () => {
    const book = carrier(job())
    const store = useJobStore()
    await store.open(7)
    store.edit([
      { path: 'spec.construction', value: 'ledged' },
      { path: 'spec.braces', value: null },
    ])
    await store.send()
    expect(book.standing().entry.spec.construction).toBe('ledged')
    expect(book.standing().entry.spec.braces).toBeUndefined()
  })
})
