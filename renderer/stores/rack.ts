import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { Takes } from '../../shared/contract.ts'
import type { RackPiece } from '../../shared/ordering/orderModel.ts'
import type { Result } from '../../shared/problem.ts'
import { request } from '../api.ts'
import { said } from '../timber/said.ts'

/** What was found of a piece in a stock-take: where it lies, or that it isn't there. */
export type Seen = { place: string } | 'not here'

const byWords = new Intl.Collator('en-GB', { numeric: true }).compare

/** The rack: its pieces, and a stock-take on its way. */
export const useRackStore = defineStore('rack', () => {
  const pieces = shallowRef<RackPiece[] | null>(null)
  const trouble = ref('')
  const busy = ref(false)
  /** Where the last piece was put down: the next is likely to lie there too. */
  const lastPlace = ref('')
  /** What was found so far, by the piece; kept while one looks at something else in between, written once at the end. */
  const seen = shallowRef<ReadonlyMap<number, Seen>>(new Map())

  /** Sections first by name, the longest piece first. */
  const sorted = computed(() =>
    [...(pieces.value ?? [])].sort(
      (a, b) => byWords(a.name, b.name) || b.length - a.length || byWords(a.place, b.place) || a.id - b.id,
    ),
  )
  /** Every place that is used, in the order of its name. */
  const places = computed(() =>
    [...new Set((pieces.value ?? []).map(({ place }) => place).filter((place) => place !== ''))].sort(
      byWords,
    ),
  )

  async function followed(reply: Promise<Result<RackPiece[]>>): Promise<boolean> {
    busy.value = true
    const given = await reply
    busy.value = false
    trouble.value = said(given)
    if (given.ok) pieces.value = given.value
    return given.ok
  }
  const read = () => followed(request('rack.list', {}))
  const add = (piece: Takes<'rack.add'>) => followed(request('rack.add', piece))
  const change = (piece: Takes<'rack.change'>) => followed(request('rack.change', piece))
  const take = (taken: Takes<'rack.take'>) => followed(request('rack.take', taken))

  function note(ids: readonly number[], found: Seen | null) {
    const now = new Map(seen.value)
    for (const id of ids)
      if (found === null) now.delete(id)
      else now.set(id, found)
    seen.value = now
  }
  const forget = () => (seen.value = new Map())
  /** Writes the stock-take: pieces not looked at are left as they are. True once it stands. */
  async function finish(): Promise<boolean> {
    const here = new Set((pieces.value ?? []).map(({ id }) => id))
    const found = [...seen.value].filter(([id]) => here.has(id))
    const done = await followed(
      request('rack.count', {
        seen: found.flatMap(([id, what]) => (what === 'not here' ? [] : [{ id, place: what.place }])),
        notFound: found.flatMap(([id, what]) => (what === 'not here' ? [id] : [])),
      }),
    )
    if (done) forget()
    return done
  }

  return {
    pieces,
    sorted,
    places,
    trouble,
    busy,
    lastPlace,
    seen,
    read,
    add,
    change,
    take,
    note,
    forget,
    finish,
  }
})
