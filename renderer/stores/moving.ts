import { defineStore } from 'pinia'
import { computed, shallowRef } from 'vue'
import type { Hold } from '../../shared/drawing/holds.ts'
import {
  backToRule,
  changeOf,
  moveStep,
  nextOnWay,
  refusalOf,
  snapped,
  stepsOn,
  type SpecChange,
  type Way,
} from '../../shared/drawing/moving.ts'
import type { Check } from '../../shared/gate/checks.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { standing } from './edits.ts'
import { useGateStore } from './gate.ts'
import { useJobStore } from './job.ts'

/**
 * A part on its way under the hand: the hold as it was taken, the gate it was taken on, where it has come to and where it is wanted; past: what it
 * meets, where the hand has gone beyond its limits.
 */
type Moving = { hold: Hold; spec: GateSpec; made: Design; way: Way; wanted: number; past: string }

/** The part that was moved last: how it stood before, and why it would go no further. */
type Moved = { field: string; before: SpecChange; why: string }

/**
 * Moving parts of the gate by hand. What moves is shown at once, worked out as a typed size is, one try a frame; it becomes one edit when it is let go
 * of, or goes back to where it was.
 */
export const useMovingStore = defineStore('moving', () => {
  const gate = useGateStore()
  const jobs = useJobStore()
  const moving = shallowRef<Moving | null>(null)
  const moved = shallowRef<Moved | null>(null)
  let frame = 0

  const change = (from: Pick<Moving, 'spec' | 'made'>, field: string, value: number) =>
    changeOf(from.spec, from.made, { field, value })
  const asBefore = (path: string): SpecChange => ({
    path,
    value: jobs.job ? standing(jobs.job, path) : null,
  })

  const said = (why: Check | undefined): string => (why ? why.message.replace(/\.$/, '') : '')

  function take(hold: Hold): boolean {
    const { spec, made, unread } = gate
    if (!spec || !made || unread.length > 0) return false
    moving.value = { hold, spec, made, way: { good: hold.value, past: null }, wanted: hold.value, past: '' }
    return true
  }

  /** One try on the way to where the part is wanted. Answers whether there is nothing left to try. */
  function tryOnce(now: Moving): boolean {
    const { hold, way, wanted } = now
    const found = nextOnWay(way, wanted, {
      unit: gate.unit,
      tried: (value) => refusalOf(now.spec, change(now, hold.field, value)),
    })
    moving.value = { ...now, way: found.way }
    if (found.way.good !== way.good) jobs.hold(handEdit(now, found.way.good))
    return found.done
  }
  const handEdit = (from: Moving, value: number) =>
    value === from.hold.value ? [] : [change(from, from.hold.field, value)]

  function onFrame() {
    frame = 0
    if (moving.value && !tryOnce(moving.value)) ask()
  }
  const ask = () => {
    if (frame === 0) frame = requestAnimationFrame(onFrame)
  }

  /** Where the hand is now, mm of the entry. */
  function to(value: number) {
    if (!moving.value) return
    const { hold } = moving.value
    const wanted = snapped(value, { limits: hold.limits, unit: gate.unit })
    const beyond = Math.abs(value - wanted) > 2 * moveStep(gate.unit)
    moving.value = { ...moving.value, wanted, past: beyond ? hold.ends[value < wanted ? 0 : 1] : '' }
    ask()
  }

  function stop() {
    cancelAnimationFrame(frame)
    frame = 0
    moving.value = null
    jobs.hold([])
  }
  /** Lets the part go where it has come to: one edit on the book. */
  function letGo() {
    while (moving.value && frame !== 0 && !tryOnce(moving.value));
    const now = moving.value
    stop()
    if (!now) return
    const { hold, way } = now
    if (way.good !== hold.value) edit(hold, change(now, hold.field, way.good), said(way.past?.why))
    else moved.value = way.past ? { field: hold.field, before: asBefore(''), why: said(way.past.why) } : null
  }
  /** How a part stood before it was first moved, as long as it stays in the hand: Esc puts that back, however many steps it went. */
  const beforeOf = (hold: Hold): SpecChange | undefined => {
    const last = moved.value
    return last?.field === hold.field && last.before.path !== '' ? last.before : undefined
  }
  function edit(hold: Hold, made: SpecChange, why: string) {
    moved.value = { field: hold.field, before: beforeOf(hold) ?? asBefore(made.path), why }
    jobs.edit([made])
  }

  /** So many steps on, as the arrow keys go. */
  function step(hold: Hold, steps: number) {
    const { spec, made } = gate
    if (!spec || !made || gate.unread.length > 0) return
    const value = stepsOn(hold.value, steps, { limits: hold.limits, unit: gate.unit })
    if (value === hold.value) {
      moved.value = {
        field: hold.field,
        before: beforeOf(hold) ?? asBefore(''),
        why: `it meets ${hold.ends[steps < 0 ? 0 : 1]}`,
      }
      return
    }
    const one = changeOf(spec, made, { field: hold.field, value })
    const why = said(refusalOf(spec, one) ?? undefined)
    if (why === '') edit(hold, one, '')
    else moved.value = { field: hold.field, before: beforeOf(hold) ?? asBefore(''), why }
  }

  /** Puts the part that was moved last back to where it stood before, and answers whether there was one. */
  function putBack(hold: Hold): boolean {
    if (moving.value) {
      stop()
      return true
    }
    const last = moved.value
    moved.value = null
    if (last?.field !== hold.field || last.before.path === '') return false
    jobs.edit([last.before])
    return true
  }

  function byRule(hold: Hold) {
    moved.value = null
    jobs.edit([backToRule(hold)])
  }
  const forget = () => (moved.value = null)

  /** Why the part goes no further, while it is under the hand or was last. */
  const why = computed(() => {
    if (!moving.value) return moved.value?.why ?? ''
    const { way, wanted, past } = moving.value
    if (way.past && Math.abs(wanted - way.good) > 0.001) return said(way.past.why)
    return past === '' ? '' : `it meets ${past}`
  })
  return { moving, moved, why, take, to, letGo, step, putBack, stop, byRule, forget }
})
