import { nextTick, onBeforeUnmount, onMounted, ref } from 'vue'
import { askedFor } from '../help/askedFor.ts'
import { useHelpStore } from '../stores/help.ts'
import { useJobStore } from '../stores/job.ts'
import { useJobsStore } from '../stores/jobs.ts'
import { usePlaceStore, type Place } from '../stores/place.ts'
import type { Command } from './command.ts'
import { leadTo } from './leadTo.ts'
import { mainThing } from './mainThing.ts'
import { useTypedAhead } from './useTypedAhead.ts'

const byDigit: Record<string, Place> = {
  '1': { name: 'jobs' },
  '2': { name: 'prices' },
  '3': { name: 'timber', sheet: 'orders' },
  '4': { name: 'workshop' },
}

type Acts = { help: () => void; list: () => void; start: () => void; go: (place: Place) => void }

/** The filled button of the part of the screen that has the hand; nothing while a list or a question lies over it. */
function pressMain(): (() => void) | undefined {
  if (document.querySelector('dialog[open], [role="listbox"], [role="alertdialog"]')) return undefined
  const button = mainThing(document.activeElement)
  return button && (() => button.click())
}

/** What a key does anywhere, with Ctrl or Cmd or by itself; undefined where it does nothing. */
function actOf({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent, acts: Acts) {
  if (key === 'F1') return acts.help
  if (key === 'F2') return acts.list
  if (!(ctrlKey || metaKey) || altKey || shiftKey) return undefined
  if (key === 'Enter') return pressMain()
  const place = byDigit[key]
  if (place) return () => acts.go(place)
  const held: Record<string, () => void> = { n: acts.start, k: acts.list }
  return held[key.toLowerCase()]
}

const onKeys = (acts: Acts) => (event: KeyboardEvent) => {
  const act = event.defaultPrevented || event.repeat ? undefined : actOf(event, acts)
  if (!act) return
  event.preventDefault()
  act()
}

/** Puts the hand on the screen itself, so that Tab goes on from there, where nothing on it has the hand by itself. */
async function holdPlace(): Promise<void> {
  await nextTick()
  if (document.activeElement === document.body) document.querySelector('main')?.focus()
}

/** Goes to a place, and once its screen is there to the very thing meant on it; going elsewhere meanwhile gives that up. */
function useGoing() {
  const places = usePlaceStore()
  const jobs = useJobStore()
  const waiting = { stop: () => {} }
  onBeforeUnmount(() => waiting.stop())
  return (place: Place, lead?: Command['lead']) => {
    waiting.stop()
    places.go(place)
    const shown = () => place.name !== 'job' || jobs.job?.id === place.id
    if (lead) waiting.stop = leadTo(lead, shown)
    else void holdPlace()
  }
}

/** The keys that hold everywhere, and the list of commands: open while `listed`. */
export function useCommands() {
  const places = usePlaceStore()
  const book = useJobsStore()
  const help = useHelpStore()
  const go = useGoing()
  const listed = ref(false)
  const ahead = useTypedAhead(listed)

  function startJob() {
    places.go({ name: 'jobs' })
    book.starting = true
  }
  const askHelp = () => (help.asked ? help.leave() : help.ask(askedFor(document.activeElement)))

  async function makeAgain(id: number): Promise<void> {
    const made = await book.repeat(id)
    if (made.ok) places.go({ name: 'job', id: made.value.id, part: 'gate' })
  }

  function choose(command: Command) {
    listed.value = false
    if (command.go) go(command.go, command.lead)
    if (command.does === 'start') startJob()
    if (command.does === 'help') askHelp()
    if (command.does === 'again' && command.job !== undefined) void makeAgain(command.job)
  }
  const open = (id: number) => choose({ id: 'open', says: '', go: { name: 'job', id, part: 'gate' } })

  const key = onKeys({
    help: askHelp,
    list: () => (listed.value = !listed.value),
    start: startJob,
    go,
  })
  onMounted(() => window.addEventListener('keydown', key))
  onBeforeUnmount(() => window.removeEventListener('keydown', key))
  return { listed, ahead, choose, open }
}
