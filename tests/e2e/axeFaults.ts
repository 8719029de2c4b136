import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'

export type AxeFault = { id: string; impact: string; where: string[] }

/**
 * What axe finds on a page, frames of papers left out. coloursAlone: its rules of contrast only. Its older way of running stays in the page (the newer one
 * carries all that it saw, passes too, to a second page: four times as long); it differs in how frames of other origins are reached, of which there are none.
 */
export async function axeFaults(page: Page, coloursAlone = false): Promise<AxeFault[]> {
  const reader = new AxeBuilder({ page }).exclude('iframe').setLegacyMode()
  const rules = coloursAlone ? { runOnly: ['color-contrast'] } : {}
  const { violations } = await reader.options({ resultTypes: ['violations'], ...rules }).analyze()
  return violations.map(({ id, impact, nodes }) => ({
    id,
    impact: impact ?? '',
    where: nodes.map(({ html }) => html),
  }))
}
