import { defineStore } from 'pinia'
import { computed } from 'vue'
import { design } from '../../shared/gate/design.ts'
import { isStop, type Check } from '../../shared/gate/checks.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import { parseSpec, specOf } from '../../shared/gate/parseSpec.ts'
import { gateDrawings, type GateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { unreadWords } from '../../shared/job/unreadWords.ts'
import { entryWord } from '../words.ts'
import { useJobStore } from './job.ts'

/** How the gate stands: sizes to come, made, or stopped by what was found. */
export type Standing = 'to come' | 'made' | 'stopped'

/** The gate on the board, worked out anew at every key: the design, its drawings and what was found. */
export const useGateStore = defineStore('gate', () => {
  const jobs = useJobStore()
  const entry = computed(() => jobs.job?.entry ?? null)
  const unit = computed(() => jobs.job?.unit ?? 'mm')
  const spec = computed(() => (entry.value ? specOf(entry.value.spec) : undefined))

  const unread = computed(() => (entry.value ? unreadWords(entry.value, unit.value) : []))

  const read = computed(() => (spec.value ? parseSpec(spec.value) : undefined))
  const outcome = computed(() => (read.value?.ok ? design(read.value.value) : undefined))
  const made = computed<Design | null>(() => (outcome.value?.made ? outcome.value.design : null))
  const drawings = computed<GateDrawings | null>(() =>
    spec.value && made.value ? gateDrawings(spec.value, made.value, unit.value) : null,
  )

  const unreadChecks = computed<Check[]>(() =>
    unread.value.map(({ field, words, asks }) => ({
      id: `unread.${field}`,
      level: 'stop',
      message: asks
        ? `${entryWord(`spec.${field}`)}: “${words}” can mean two things.`
        : `${entryWord(`spec.${field}`)}: “${words}” isn’t a length that can be used.`,
      figures: [],
      remedy: asks ? 'Choose which one is meant.' : 'Write it as 1830, 72" or 5\' 11".',
      field,
    })),
  )
  const brokenRules = computed<Check[]>(() => {
    if (!read.value || read.value.ok) return []
    return read.value.problems.map(({ field, message }) => ({
      id: `entry.${field}`,
      level: 'stop',
      message: `${entryWord(`spec.${field}`)}: ${message}.`,
      figures: [],
      remedy: 'Change this entry.',
      field,
    }))
  })
  const checks = computed<Check[]>(() => {
    const found = outcome.value?.made ? outcome.value.design.checks : (outcome.value?.stopped.checks ?? [])
    return [...unreadChecks.value, ...brokenRules.value, ...found]
  })
  const stops = computed(() => checks.value.filter(isStop))

  const standing = computed<Standing>(() => {
    if (!spec.value) return 'to come'
    return made.value && brokenRules.value.length === 0 ? 'made' : 'stopped'
  })

  return { entry, unit, spec, unread, made, drawings, checks, stops, standing }
})
