import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { hosted } from './hosted.ts'
import { inProject } from './paths.ts'
import { everyState } from './pictures/everyState.ts'
import { looks, wears } from './pictures/looks.ts'
import { stand } from './pictures/stand.ts'
import { startChromium } from './chromium.ts'

/**
 * Pictures of every screen in every state, at a small laptop's size and a large screen's, light and dark, to build/out/pictures:
 * for looking at one by one. Needs a built renderer. With words after it, only states whose name holds one of them.
 */
const sizes = [
  { name: 'laptop', width: 1093, height: 614 },
  { name: 'large', width: 1920, height: 1080 },
]

/** Two looks, or with `--every-look` the strongest, the largest letters and what is worked by fingers as well. */
const lights = process.argv.includes('--every-look') ? looks : looks.slice(0, 2)
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const chosen = everyState.filter(
  ({ name }) => wanted.length === 0 || wanted.some((word) => name.includes(word)),
)
const folder = inProject('build/out/pictures')
const books = mkdtempSync(join(tmpdir(), 'bracework-pictures-'))
mkdirSync(folder, { recursive: true })

const hosts = {
  empty: await hosted(join(books, 'empty.book'), { empty: true }),
  sample: await hosted(join(books, 'sample.book')),
}
const browser = await startChromium()
try {
  for (const state of chosen)
    for (const size of sizes) {
      const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce' })
      const page = await context.newPage()
      page.setDefaultTimeout(8000)
      await stand(page, state, { sample: hosts.sample.address, empty: hosts.empty.address }).catch(
        (error: Error) => process.stderr.write(`${state.name}: ${error.message}\n`),
      )
      for (const light of lights) {
        await wears(page, light)
        await page.waitForTimeout(150)
        await page.screenshot({ path: join(folder, `${state.name}-${size.name}-${light.name}.png`) })
      }
      await context.close()
    }
} finally {
  await browser.close()
  await Promise.all([hosts.empty.stop(), hosts.sample.stop()])
  rmSync(books, { recursive: true, force: true })
}
process.stdout.write(`${chosen.length * sizes.length * lights.length} pictures in ${folder}\n`)
