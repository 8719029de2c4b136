/** What a workshop does with the program day by day, in the order of a job's life. */
export const coreTasks = [
  'new job',
  'survey',
  'change a size on the drawing',
  'price',
  'quote',
  'accept',
  'order timber',
  'issue a card',
  'reprint an old card',
  'raise prices',
  'back up',
  'make the same again',
] as const
export type CoreTask = (typeof coreTasks)[number]

/** How a task is done: by the keyboard alone, or by a finger alone. */
export const ways = ['keys', 'touch'] as const
export type Way = (typeof ways)[number]

/**
 * How many actions each task takes at most, from the program's opening screen to the thing done. An action is one press of a key or chord, one tap, one
 * swipe, or one text typed into one entry. A task that comes to need more fails.
 */
export const actionsOf: Record<CoreTask, Record<Way, number>> = {
  'new job': { keys: 10, touch: 7 },
  survey: { keys: 14, touch: 14 },
  'change a size on the drawing': { keys: 5, touch: 4 },
  price: { keys: 10, touch: 10 },
  quote: { keys: 4, touch: 4 },
  accept: { keys: 6, touch: 6 },
  'order timber': { keys: 5, touch: 4 },
  'issue a card': { keys: 4, touch: 4 },
  'reprint an old card': { keys: 4, touch: 4 },
  'raise prices': { keys: 6, touch: 5 },
  'back up': { keys: 5, touch: 4 },
  'make the same again': { keys: 3, touch: 3 },
}

/** More than this for something done daily is a fault of the program, however it is done. */
export const mostForDaily = 15
/** An old card is wanted with somebody waiting. */
export const mostForReprint = 4

/** The table as it stands in the notes for whoever carries the program on. */
export const tableLines = (): string[] => [
  '| task | by keys | by touch |',
  '| --- | --- | --- |',
  ...coreTasks.map((task) => `| ${task} | ${actionsOf[task].keys} | ${actionsOf[task].touch} |`),
]
