import { defineStore } from 'pinia'
import { computed, nextTick, ref } from 'vue'
import type { Deed, Deeds, Question, Settling } from '../../shared/undo/deed.ts'
import { request, sentences } from '../api.ts'
import { useJobStore } from './job.ts'
import { usePlaceStore, placeAt } from './place.ts'
import { useSettingsStore } from './settings.ts'
import { markField } from '../undo/markField.ts'

export type Way = 'back' | 'again'
/** What must be said before anything is taken: entries changed again since, or something in between that stands. */
export type Asking =
  | { about: 'changed'; way: Way; upTo: number; questions: Question[] }
  | { about: 'stands'; fixed: Deed; next: Deed | undefined }

const nothing: Deeds = { back: [], again: [] }
const takable = (deeds: readonly Deed[]): Deed | undefined => deeds.find(({ fixed }) => fixed === null)

/** What was done lately, what can be taken back and done again: one job's on its page, the book's elsewhere or when asked for. */
export const useUndoStore = defineStore('undo', () => {
  const places = usePlaceStore()
  const jobs = useJobStore()
  const deeds = ref<Deeds>(nothing)
  const whole = ref(false)
  const asking = ref<Asking | null>(null)
  /** The last thing said, for those who listen to the screen; refused: it couldn't be done, and is shown as well. */
  const said = ref('')
  const refused = ref('')
  const busy = ref(false)
  /** Screens that read at their opening are opened anew once this has moved. */
  const turn = ref(0)

  const ownJob = computed(() => (places.place.name === 'job' ? places.place.id : null))
  const scope = computed(() => (whole.value ? null : ownJob.value))
  const nextBack = computed(() => takable(deeds.value.back))
  const nextAgain = computed(() => deeds.value.again[0])

  async function read(): Promise<void> {
    const asked = scope.value
    const reply = await request('undo.list', { jobId: asked })
    if (reply.ok && asked === scope.value) deeds.value = reply.value
  }

  /** A deed's name, without the job's number on the page of that very job. */
  function nameOf(deed: Deed): string {
    const number = jobs.job?.number
    const end = number === undefined ? '' : ` on job ${number}`
    return end !== '' && deed.jobId === ownJob.value && deed.name.endsWith(end)
      ? deed.name.slice(0, -end.length)
      : deed.name
  }

  const here = (): string => JSON.stringify(places.place)

  /** Goes to where a deed shows, and marks its entry for a moment. Who went elsewhere since it was asked for is left where they are. */
  async function show({ place, jobId, fixed }: Deed, from: string): Promise<void> {
    if (fixed !== null) return
    const to = placeAt(place.address)
    if (here() === from && JSON.stringify(to) !== from) places.go(to)
    if (jobId === null || place.field === '') turn.value += 1
    await jobs.look()
    await useSettingsStore().read()
    await nextTick()
    markField(place.field)
  }

  /** One after another, however fast the key is pressed: the next is named by what the one before left. */
  let turns: Promise<void> = Promise.resolve()
  const inTurn = (work: () => Promise<void>): Promise<void> => (turns = turns.then(work, work))

  async function taken(way: Way, upTo: number, settle: Settling = 'ask'): Promise<void> {
    busy.value = true
    asking.value = null
    refused.value = ''
    const from = here()
    try {
      await jobs.send()
      const reply = await request(`undo.${way}`, { upTo, jobId: scope.value, settle })
      if (!reply.ok) {
        refused.value = sentences(reply)
        said.value = refused.value
      } else if (reply.value.done) {
        const last = reply.value.deeds.at(-1)
        const count = reply.value.deeds.length
        const word = way === 'back' ? 'Taken back' : 'Done again'
        said.value = last && count === 1 ? `${word}: ${nameOf(last)}` : `${word}: ${count} things`
        if (last) await show(last, from)
      } else asking.value = { about: 'changed', way, upTo, questions: reply.value.asks }
      await read()
    } finally {
      busy.value = false
    }
  }

  /** Takes the latest deed back. Where something that stands was done since, that is said first. */
  async function latestBack(): Promise<void> {
    await jobs.send()
    await read()
    const latest = deeds.value.back[0]
    if (!latest) said.value = 'There is nothing to take back.'
    else if (latest.fixed !== null) asking.value = { about: 'stands', fixed: latest, next: nextBack.value }
    else await taken('back', latest.id)
  }

  async function nextOnce(): Promise<void> {
    await jobs.send()
    await read()
    const next = nextAgain.value
    if (next) await taken('again', next.id)
    else said.value = 'There is nothing to do again.'
  }

  const take = (way: Way, upTo: number, settle?: Settling) => inTurn(() => taken(way, upTo, settle))
  const back = () => inTurn(latestBack)
  const again = () => inTurn(nextOnce)
  const leave = () => (asking.value = null)
  const dismiss = () => (refused.value = '')
  const state = { deeds, whole, asking, said, refused, busy, turn, ownJob, scope, nextBack, nextAgain }
  return { ...state, read, nameOf, take, back, again, leave, dismiss }
})
