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

  const held: Record<string, () => void> = { n: startJob, k: () => (listed.value = !listed.value) }
  function key(event: KeyboardEvent) {
    if (event.defaultPrevented) return
    const withKey = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey
    const letter = event.key.toLowerCase()
    const digit = withKey ? byDigit[letter] : undefined
    const act =
      event.key === 'F1'
        ? askHelp
        : event.key === 'F2'
          ? held['k']
          : digit
            ? () => places.go(digit)
            : withKey
              ? held[letter]
              : undefined
    if (!act) return
    event.preventDefault()
    act()
  }
  onMounted(() => window.addEventListener('keydown', key))
  onBeforeUnmount(() => window.removeEventListener('keydown', key))
  return { listed, choose, open }
}
