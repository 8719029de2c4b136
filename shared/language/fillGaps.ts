const gap = /\{(\d+)\}/g

/** A message with its gaps filled: 'Fault {0}' and ['7F'] is 'Fault 7F'. A gap without a value stays empty. */
export const fillGaps = (message: string, values: readonly string[]): string =>
  message.replace(gap, (_, number: string) => values[Number(number)] ?? '')
