import { onBeforeUnmount, onMounted, ref } from 'vue'
import { askedFor } from '../help/askedFor.ts'
import { useHelpStore } from '../stores/help.ts'
import { useJobsStore } from '../stores/jobs.ts'
import { usePlaceStore, type Place } from '../stores/place.ts'
import type { Command } from './commands.ts'

const byDigit: Record<string, Place> = {
  '1': { name: 'jobs' },
  '2': { name: 'prices' },
  '3': { name: 'timber', sheet: 'orders' },
  '4': { name: 'workshop' },
}

type Acts = { help: () => void; list: () => void; start: () => void; go: (place: Place) => void }

/** What a key does anywhere, with Ctrl or Cmd or by itself; undefined where it does nothing. */
function actOf({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent, acts: Acts) {
  if (key === 'F1') return acts.help
  if (key === 'F2') return acts.list
  if (!(ctrlKey || metaKey) || altKey || shiftKey) return undefined
  const place = byDigit[key]
  if (place) return () => acts.go(place)
  const held: Record<string, () => void> = { n: acts.start, k: acts.list }
  return held[key.toLowerCase()]
}

const onKeys = (acts: Acts) => (event: KeyboardEvent) => {
  const act = event.defaultPrevented ? undefined : actOf(event, acts)
  if (!act) return
  event.preventDefault()
  act()
}

/** The keys that hold everywhere, and the list of commands: open while `listed`. */
export function useCommands() {
  const places = usePlaceStore()
  const book = useJobsStore()
  const help = useHelpStore()
  const listed = ref(false)

  function startJob() {
    places.go({ name: 'jobs' })
    book.starting = true
  }
  const askHelp = () => (help.asked ? help.leave() : help.ask(askedFor(document.activeElement)))

  async function makeAgain(): Promise<void> {
    if (places.place.name !== 'job') return
    const made = await book.repeat(places.place.id)
    if (made.ok) places.go({ name: 'job', id: made.value.id, part: 'gate' })
  }

  function choose(command: Command) {
    listed.value = false
    if (command.go) places.go(command.go)
    if (command.does === 'start') startJob()
    if (command.does === 'help') askHelp()
    if (command.does === 'again') void makeAgain()
  }
  function open(id: number) {
    listed.value = false
    places.go({ name: 'job', id, part: 'gate' })
  }

  const key = onKeys({
    help: askHelp,
    list: () => (listed.value = !listed.value),
    start: startJob,
    go: (place) => places.go(place),
  })
  onMounted(() => window.addEventListener('keydown', key))
  onBeforeUnmount(() => window.removeEventListener('keydown', key))
  return { listed, choose, open }
}
