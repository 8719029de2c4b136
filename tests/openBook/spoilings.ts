import { mkdirSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { job, made, paper, pdf, placeLike } from './soundFolder.ts'
import { first, inText, rewrite } from './spoiling.ts'

/** What is done to a sound folder, and what the person is then told. */
export type Spoiling = [title: string, spoil: (folder: string) => void, told: RegExp]

export const spoilings: Spoiling[] = [
  [
    'an empty folder',
    (at) => (rmSync(at, { recursive: true }), mkdirSync(at)),
    /^book\.json: This folder isn’t a job book/,
  ],
  [
    'another program’s contents',
    (at) => writeFileSync(join(at, 'book.json'), '{"format":"other"}'),
    /^book\.json: format: it isn’t a job book.*got 'other'/,
  ],
  [
    'a newer program’s',
    (at) => inText(at, 'book.json', /"layout": \d+/, '"layout": 999'),
    /^book\.json: layout: it was taken out by a newer Bracework/,
  ],
  ['contents cut short', (at) => truncateSync(join(at, 'book.json'), 300), /^book\.json: it can’t be read/],
  [
    'contents that lead out',
    (at) => inText(at, 'book.json', '"settings.json"', '"../settings.json"'),
    /^book\.json: files\[0\]: got '\.\.\/settings\.json', accepted is a place inside/,
  ],
  [
    'contents with a file twice',
    (at) => inText(at, 'book.json', '"settings.json"', '"settings.json", "SETTINGS.json"'),
    /^book\.json: files\[1\]: got ‘SETTINGS\.json’ a second time/,
  ],
  [
    'contents with a file of no kind',
    (at) => inText(at, 'book.json', '"settings.json"', '"settings.json", "run.exe"'),
    /^book\.json: files\[1\]: got ‘run\.exe’, accepted are/,
  ],
  [
    'a count that is wrong',
    (at) => inText(at, 'book.json', /"changes": \d+/, '"changes": 7'),
    /^book\.json: rows\.changes: got 7, but the files hold \d+/,
  ],
  ['a missing job', (at) => rmSync(join(at, job())), /^jobs\/S\/.*\.json: the file is missing/],
  ['a missing paper', (at) => rmSync(join(at, pdf())), /^papers\/S\/.*\.pdf: the file is missing/],
  [
    'a paper that was changed',
    (at) => inText(at, pdf(), 'workshop', 'workshOp'),
    /^papers\/S\/.*\.pdf: it isn’t the paper that was issued: got the fingerprint '[0-9a-f]{40}…', accepted is/,
  ],
  [
    'a paper of no bytes',
    (at) => truncateSync(join(at, pdf()), 0),
    /^papers\/S\/.*\.pdf: it isn’t the paper/,
  ],
  [
    'a job 100,000 lists deep',
    (at) => writeFileSync(join(at, job()), '['.repeat(100_000)),
    /^jobs\/.*: got lists within lists deeper than 450/,
  ],
  [
    'a name past an object’s own',
    (at) => inText(at, job(), '"entry": {', '"entry": { "__proto__": {"x": 1},'),
    /^jobs\/.*: jobs\[0\]\.entry\.__proto__: got the name ‘__proto__’/,
  ],
  [
    'NaN for a length',
    (at) => inText(at, job(), /"endTrim": [\d.]+/, '"endTrim": NaN'),
    /^jobs\/.*: it can’t be read/,
  ],
  [
    '1e308 for a length',
    (at) => inText(at, job(), /"endTrim": [\d.]+/, '"endTrim": 1e308'),
    /^jobs\/.*: jobs\[0\]\.entry\.spec\.boards\.endTrim: got 1e\+308, accepted is a length in mm from 0 to 500/,
  ],
  [
    '1e999 for a length',
    (at) => inText(at, job(), /"endTrim": [\d.]+/, '"endTrim": 1e999'),
    /^jobs\/.*endTrim: got a number past any/,
  ],
  [
    'U+0000 before a title',
    (at) => rewrite(at, job(), (rows) => (first(rows, 'jobs')['title'] = '\0Side gate')),
    /^jobs\/.*: jobs\[0\]\.title: got a text with a character that nothing is written with/,
  ],
  [
    'a title of a million signs',
    (at) => rewrite(at, job(), (rows) => (first(rows, 'jobs')['title'] = 'x'.repeat(1_000_000))),
    /^jobs\/.*: jobs\[0\]\.title: got 'x{40}…', accepted is a text of up to 2000/,
  ],
  [
    'a stage that is none',
    (at) => rewrite(at, job(), (rows) => (first(rows, 'jobs')['stage'] = 'lost')),
    /^jobs\/.*: jobs\[0\]\.stage: got 'lost', accepted is one of enquiry/,
  ],
  [
    'a gate that breaks the rules between its parts',
    (at) =>
      rewrite(
        at,
        job(),
        (rows) =>
          ((first(rows, 'jobs')['entry'] as { spec: Record<string, unknown> }).spec['braces'] = undefined),
      ),
    /^jobs\/.*: jobs\[0\]\.entry\.spec\.braces: /,
  ],
  [
    'a column nobody knows',
    (at) => rewrite(at, job(), (rows) => (first(rows, 'jobs')['password'] = 'x')),
    /^jobs\/.*: jobs\[0\]\.password: unknown key/,
  ],
  [
    'a list nobody knows',
    (at) => rewrite(at, job(), (rows) => (rows['users'] = [])),
    /^jobs\/.*: users: unknown here, accepted are jobs, changes, options, workDone/,
  ],
  [
    'two jobs in a file',
    (at) => rewrite(at, job(), (rows) => rows['jobs']?.push(first(rows, 'jobs'))),
    /^jobs\/.*: jobs: got a list of 2, accepted is a list of 1/,
  ],
  [
    'a number that two jobs have',
    (at) => rewrite(at, placeLike(/^jobs\/S\/S-002/), (rows) => (first(rows, 'jobs')['number'] = 'S-001')),
    /^jobs\/.*: jobs\[0\]\.number: got 'S-001' a second time/,
  ],
  [
    'a row that two things have',
    (at) =>
      rewrite(at, 'customers.json', (rows) => (rows['customers'] ?? []).forEach((row) => (row['id'] = 1))),
    /^customers\.json: customers\[1\]\.id: got 1 a second time/,
  ],
  [
    'a job of nobody',
    (at) => rewrite(at, job(), (rows) => (first(rows, 'jobs')['customerId'] = 7777)),
    /^jobs\/.*: jobs\[0\]\.customerId: got 7777, which none of customers has/,
  ],
  [
    'a paper of no job',
    (at) => rewrite(at, paper(), (rows) => (first(rows, 'papers')['jobId'] = 7777)),
    /^papers\/.*: papers\[0\]\.jobId: got 7777, which none of jobs has/,
  ],
  [
    'prices of another list',
    (at) => writeFileSync(join(at, 'prices/prices.csv'), 'a,b\r\n1,2\r\n'),
    /^prices\/prices\.csv: line 1: got the columns a, b, accepted are id, itemId/,
  ],
  [
    'a price with a cell too few',
    (at) => inText(at, 'prices/prices.csv', /\r\n(\d+),/, '\r\n$1\r\n9,'),
    /^prices\/prices\.csv: line 2: got 1 cells, accepted are 11/,
  ],
  [
    'a price in words',
    (at) =>
      inText(at, 'prices/prices.csv', /\r\n1,(\d+),(\d*),(\w+),([\d.]*),\d+,/, '\r\n1,$1,$2,$3,$4,cheap,'),
    /^prices\/prices\.csv: line 2\.pricePence: got 'cheap', accepted is a whole number from 0/,
  ],
  [
    'a price below nothing',
    (at) => inText(at, 'prices/prices.csv', /\r\n1,(\d+),(\d*),(\w+),([\d.]*),\d+,/, '\r\n1,$1,$2,$3,$4,-5,'),
    /^prices\/prices\.csv: line 2\.pricePence: got -5/,
  ],
  [
    'a quotation mark without its fellow',
    (at) => inText(at, 'prices/suppliers.csv', '\r\n1,', '\r\n1,"'),
    /^prices\/suppliers\.csv: line \d+: a quotation mark there has no fellow/,
  ],
  [
    'a price line whose facts aren’t of its kind',
    (at) => rewrite(at, 'prices/lines.json', (rows) => (first(rows, 'items')['facts'] = {})),
    /^prices\/lines\.json: items\[0\]\.facts\.\w+: /,
  ],
  [
    'a setting that can’t be',
    (at) => rewrite(at, 'settings.json', (rows) => rows['settings']?.push({ key: 'unit', value: 'cubits' })),
    /^settings\.json: settings\[\d\]\.value: got 'cubits'/,
  ],
  [
    'words in another code',
    (at) => writeFileSync(join(at, 'rack.json'), Buffer.from([0x7b, 0xff, 0xfe])),
    /^rack\.json: it can’t be read as words/,
  ],
  [
    'a file that leads out of the folder',
    (at) => (rmSync(join(at, 'settings.json')), symlinkSync('/etc/passwd', join(at, 'settings.json'))),
    /^settings\.json: it leads to another place/,
  ],
  [
    'a folder that leads out of the folder',
    (at) => (
      rmSync(join(at, 'jobs'), { recursive: true }),
      symlinkSync(join(made.folder, 'jobs'), join(at, 'jobs'))
    ),
    /^jobs\/.*: it leads to another place/,
  ],
  [
    'a folder in a file’s place',
    (at) => (rmSync(join(at, 'rack.json')), mkdirSync(join(at, 'rack.json'))),
    /^rack\.json: it is no file/,
  ],
  [
    'a file of 2 GB',
    (at) => truncateSync(join(at, job()), 2 * 1024 ** 3),
    /^jobs\/.*: it weighs 2048 MB, accepted is up to 64 MB/,
  ],
  [
    'a paper of 2 GB',
    (at) => truncateSync(join(at, pdf()), 2 * 1024 ** 3),
    /^papers\/.*\.pdf: it weighs 2048 MB/,
  ],
]
