import { finish } from './commandLine.ts'
import { runCard } from './runCard.ts'

finish(await runCard(process.argv.slice(2)))
