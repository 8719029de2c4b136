import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import { isStop } from '../../shared/gate/checks.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import type { Estimate } from '../../shared/pricing/estimate.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import type { Needs } from '../../shared/pricing/needs.ts'
import { plannedTimber } from '../../shared/pricing/planTimber.ts'
import type { JobOption, QuotedMoney, QuotedOption } from '../../shared/pricing/quotation.ts'
import { repriced } from '../../shared/pricing/requote.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { sentences } from '../api.ts'
import { readPriceBook } from '../prices/readPriceBook.ts'
import { today } from '../today.ts'
import { useGateStore } from './gate.ts'
import { useOptionsStore } from './options.ts'
import { rememberedTimber } from './rememberedTimber.ts'
import { useSettingsStore } from './settings.ts'

/** A version with what it comes to, or why it comes to nothing yet. */
export type PricedOption =
  | { stands: 'priced'; option: JobOption; spec: GateSpec; face: Drawing; estimate: Estimate }
  | { stands: 'not yet'; option: JobOption; title: string; why: string }

/** A gate that can be made, with what it takes. */
type MadeGate = { spec: GateSpec; design: Design; needs: Needs; face: Drawing }
type Working = { made: MadeGate } | { title: string; why: string }

const tooLarge = 'A sum put by hand is too large: the whole comes to over ten million.'

/** Versions of the job's gate priced, worked out anew at every key and at every change of price. */
export const useEstimateStore = defineStore('estimate', () => {
  const gate = useGateStore()
  const options = useOptionsStore()
  const settings = useSettingsStore()
  const book = shallowRef<PriceBook | null>(null)
  const day = ref(today())
  const trouble = ref('')
  const buyTimber = rememberedTimber(plannedTimber)

  /** Reads the price book as it stands today. */
  async function read(): Promise<void> {
    const reply = await readPriceBook()
    trouble.value = sentences(reply)
    day.value = today()
    if (reply.ok) book.value = reply.value
  }
  const open = computed(() => (book.value ? standingBook(book.value, day.value) : null))

  const worked = (spec: GateSpec, made: Design): Working => ({
    made: { spec, design: made, needs: needsOf(spec, made), face: gateDrawings(spec, made, gate.unit).face },
  })

  /** The job's own gate as it stands on the board. */
  const drawn = computed<Working>(() => {
    if (gate.standing === 'to come')
      return { title: 'Sizes first', why: 'The gate is priced as soon as its sizes are entered.' }
    if (gate.spec && gate.made && gate.standing === 'made') return worked(gate.spec, gate.made)
    const stop = gate.stops[0]
    return {
      title: 'This gate can’t be made as entered',
      why: stop ? `${stop.message} ${stop.remedy}` : 'Look at what stands in the way.',
    }
  })

  /** Versions with a gate of their own, each worked out once for as long as it stays the same. */
  const known = new WeakMap<GateSpec, { unit: string; working: Working }>()
  function own(spec: GateSpec): Working {
    const before = known.get(spec)
    if (before?.unit === gate.unit) return before.working
    const outcome = design(spec)
    const stop = outcome.made ? undefined : outcome.stopped.checks.find(isStop)
    const working = outcome.made
      ? worked(spec, outcome.design)
      : { title: 'This version can’t be made', why: stop ? `${stop.message} ${stop.remedy}` : '' }
    known.set(spec, { unit: gate.unit, working })
    return working
  }

  function priced(option: JobOption): PricedOption | undefined {
    const working = option.spec ? own(option.spec) : drawn.value
    const charging = settings.summary?.settings
    if (!('made' in working)) return { stands: 'not yet', option, ...working }
    if (!open.value || !charging) return undefined
    const { spec, needs, face } = working.made
    const { money, times, cutting } = charging
    try {
      const asked = { needs, entry: option.entry, settings: money, times, cutting, buyTimber }
      const estimate = estimateFrom(open.value, asked)
      return { stands: 'priced', option, spec, face, estimate }
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      return { stands: 'not yet', option, title: 'No price can be told', why: tooLarge }
    }
  }

  /** What a quoted version would come to at today's prices: its own needs, entries and way of charging, so that prices alone differ. */
  const quotedToday = (money: QuotedMoney, option: QuotedOption): Estimate | null =>
    open.value && repriced(open.value, money, option)
  /** The face of a quoted version, from its own frozen gate. */
  function quotedFace({ spec }: QuotedOption): Drawing | null {
    const working = own(spec)
    return 'made' in working ? working.made.face : null
  }

  const all = computed(() => options.options.flatMap((option) => priced(option) ?? []))
  const chosen = computed(() => all.value.find(({ option }) => option.id === options.chosen?.id))
  /** The gate as drawn, for a version to start from; undefined while it can't be made. */
  const drawnSpec = computed(() => ('made' in drawn.value ? drawn.value.made.spec : undefined))

  return { book, day, trouble, read, all, chosen, drawnSpec, quotedToday, quotedFace }
})
