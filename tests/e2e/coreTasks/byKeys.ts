import type { KeyHand } from './keyHand.ts'
import type { CoreTask } from './table.ts'

/** A job of the story by its customer, another's that is of the leaf's own sizes and already drawn, and where copies go. */
export type Story = { name: string; drawn: string; stick: string }

/** The word a job is asked for by: its customer's first name. */
export const first = ({ name }: Pick<Story, 'name'>): string => name.split(' ')[0]?.toLowerCase() ?? ''

/** Types figures one after the other, Enter between them. */
async function fill(hand: KeyHand, figures: string[]): Promise<void> {
  for (const [at, figure] of figures.entries()) {
    if (at > 0) await hand.press('Enter')
    await hand.type(figure)
  }
}

async function newJob(hand: KeyHand, { name }: Story): Promise<void> {
  await hand.ask('new', 'Start a new job')
  await hand.held('form[aria-label="New job"] input')
  await fill(hand, [name, 'Lower Rebate'])
  await hand.press('Enter')
  await hand.press('Enter')
  await hand.type('Side gate')
  await hand.press('Control+Enter')
  await hand.held('[data-field="size.width"]')
}

async function survey(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`measure ${first(story)}`, 'Measure the opening')
  await hand.held('[data-field="size.widths.0"]')
  await fill(hand, ['1004', '1001', '1006', '1850', '1846'])
  await hand.press('Enter')
  await hand.held('[data-field="site.slopeAlong"]')
  await hand.type('12')
}

async function changeSize(hand: KeyHand, { drawn }: Story): Promise<void> {
  await hand.ask(`width ${first({ name: drawn })}`, 'Change the width')
  await hand.held('.figure-entry input')
  await hand.type('970')
  await hand.press('Enter')
}

async function price(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`add line ${first(story)}`, 'Add a line to the price')
  await hand.held('[data-field="extras.1"]')
  await fill(hand, ['Taking the old gate away', '37.05'])
  await hand.ask(`hours ${first(story)}`, 'Hours in the price')
  await hand.held('[data-line^="making."] input')
  await hand.type('95')
}

async function quote(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`issue quotation ${first(story)}`, 'Issue the quotation')
  await hand.held('[data-lead="issue"]')
  await hand.press('Enter')
}

async function accept(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`accept ${first(story)}`, 'Accept the quotation')
  await hand.held('[data-field="accept.on"]')
  await hand.press('Tab')
  await hand.type('Yes please, before the lambs')
  await hand.press('Control+Enter')
}

async function orderTimber(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`order ${first(story)}`, 'Order the timber')
  await hand.held('[data-plan]')
  await hand.press('Enter')
  await hand.held('[data-place]')
  await hand.press('Enter')
}

async function issueCard(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`issue card ${first(story)}`, 'Issue the card')
  await hand.held('[data-lead="issue"]')
  await hand.press('Enter')
}

async function reprint(hand: KeyHand, story: Story): Promise<void> {
  await hand.ask(`print 1 ${first(story)}`, 'Print card 1')
  await hand.held('[data-lead="print"]')
  await hand.press('Enter')
}

async function raisePrices(hand: KeyHand): Promise<void> {
  await hand.ask('raise', 'Raise prices')
  await hand.held('[data-field="percent"]')
  await hand.type('4.5')
  await hand.press('Enter')
  await hand.page.locator('[data-apply]:enabled').waitFor()
  await hand.press('Control+Enter')
}

async function backUp(hand: KeyHand, { stick }: Story): Promise<void> {
  await hand.ask('back up', 'Back up the book')
  await hand.held('[data-field="keeping.folder"]')
  await hand.type(stick)
  await hand.press('Enter')
}

const sameAgain = (hand: KeyHand, story: Story): Promise<void> =>
  hand.ask(`again ${first(story)}`, 'Make the same again')

/** Each task by the keyboard alone, from the opening screen on. */
export const byKeys: Record<CoreTask, (hand: KeyHand, story: Story) => Promise<void>> = {
  'new job': newJob,
  survey,
  'change a size on the drawing': changeSize,
  price,
  quote,
  accept,
  'order timber': orderTimber,
  'issue a card': issueCard,
  'reprint an old card': reprint,
  'raise prices': raisePrices,
  'back up': backUp,
  'make the same again': sameAgain,
}
