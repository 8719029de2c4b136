/** What a person at the stand-in's window can do: load addresses, call the bridge, or try a call from elsewhere. */
export type Window = {
  url: string
  load: (address: string) => Promise<Response>
  world: Record<string, Record<string, (payload: unknown) => Promise<unknown>>>
  asStranger: (name: string) => Promise<unknown>
}

/** What came of it, as plain values that can be printed. */
export type Report = {
  files: { url: string; status: number; type: string | null; policy: string | null }[]
  outside: number[]
  worldNames: string[]
  bridgeNames: string[]
  summary: unknown
  created: unknown
  found: unknown
  draft: unknown
  copied: unknown
  badRequest: unknown
  stranger: unknown
}

const addressesIn = (page: string, base: string): string[] =>
  [...page.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address = '']) => new URL(address, base).href)

const loadAll = async ({ url, load }: Window): Promise<Report['files']> => {
  const page = await (await load(url)).text()
  const files: Report['files'] = []
  for (const address of [url, ...addressesIn(page, url)]) {
    const { status, headers } = await load(address)
    const [type, policy] = [headers.get('content-type'), headers.get('content-security-policy')]
    files.push({ url: address, status, type, policy })
  }
  return files
}

type Rows = { value?: { rows: { id: number; stage: string }[] } }
type Draft = { ok: boolean; value?: { base64: string } }

/** A draft of the card of a job that is being made; only its first letters, which say what kind of file it is. */
const draftStart = async (call: (name: string, payload: unknown) => unknown): Promise<unknown> => {
  const { value } = (await call('jobs.list', { search: '', stage: 'making' })) as Rows
  const draft = (await call('papers.draft', { jobId: value?.rows[0]?.id, format: 'a4' })) as Draft
  return draft.value ? Buffer.from(draft.value.base64, 'base64').toString('latin1', 0, 5) : draft
}

/** Opens the page with all it asks for, makes a job, finds it again, and tries what must be refused. */
export const playPerson = async (window: Window): Promise<Report> => {
  const bridge = window.world['bracework'] ?? {}
  const call = (name: string, payload: unknown): Promise<unknown> | undefined => bridge[name]?.(payload)
  const outside = [
    'app://bracework/../main/main.cjs',
    'app://bracework/%2e%2e/main/main.cjs',
    'app://elsewhere/',
  ]
  return {
    files: await loadAll(window),
    outside: await Promise.all(outside.map(async (address) => (await window.load(address)).status)),
    worldNames: Object.keys(window.world),
    bridgeNames: Object.keys(bridge),
    summary: await call('book.summary', {}),
    created: await call('jobs.create', {
      customerName: 'Müller & daughter',
      town: 'Long Barn',
      phone: '',
      title: 'Side gate 1310 high',
      due: '2027-03-14',
    }),
    found: await call('jobs.list', { search: 'muller', stage: null }),
    draft: await draftStart(call),
    copied: await call('keeping.copy', {}),
    badRequest: await call('jobs.open', { id: '7; DROP TABLE jobs' }),
    stranger: await window.asStranger('jobs.list'),
  }
}
