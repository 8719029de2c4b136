import type { Topic } from '../topic.ts'

/** What help tells of what lies beside the figures: notes, usual gates, two gates side by side, taking back. */
export const handTopics: Topic[] = [
  {
    id: 'notes',
    title: 'Notes and photographs',
    lead: 'What was said and what was seen, under its day, with the job it belongs to.',
    also: 'note photograph picture photo camera remember telephone call happened log history standing',
    parts: [
      {
        heading: 'Three kinds',
        says: [
          'The standing note is always in sight and is printed on the job card. A new note stands under its day: a call, a promise, what was found on site. What happened writes itself: every stage, paper, price and change, with its time.',
        ],
      },
      {
        heading: 'Photographs',
        steps: [
          'Choose them, drop them on the page or paste them: JPEG, PNG or WebP.',
          'Say in a few words what each shows: the search finds it by them.',
        ],
        says: ['They are scaled down and kept in the book itself, without where they were taken.'],
      },
      {
        heading: 'Set right or taken away',
        says: [
          'A note that is mended keeps its old words under What happened. One taken away can be taken back.',
        ],
      },
    ],
  },
  {
    id: 'usual',
    title: 'Usual gates, and two side by side',
    lead: 'A gate you make again and again is kept once under a name, and laid over any job.',
    also: 'template preset standard usual compare beside version same again start from',
    parts: [
      {
        heading: 'Keep one, use it',
        steps: [
          'In any job, under Gate, open Usual gates and keep this gate under a name.',
          'Starting a new job, choose it under Start from. The sizes of the opening stay to be given.',
          'In a job that is begun, lay it over: sizes and hand stay, the way of making comes from the usual gate.',
        ],
        drawing: 'parts',
      },
      {
        heading: 'Side by side',
        says: [
          'Two gates drawn to one scale, with what differs listed: another version of this job, an old card, a usual gate, any other job. A row that is pointed at lights in both.',
        ],
      },
    ],
  },
  {
    id: 'taking-back',
    title: 'Taking back',
    lead: 'Whatever was done in the book can be taken back, the last thing first, even after the program was closed.',
    also: 'undo redo mistake wrong back again ctrl z lost gone',
    parts: [
      {
        heading: 'One thing, or many',
        says: [
          'The button at the top names what was done last; Ctrl+Z takes it back, Ctrl+Y does it again. The arrow beside it lists what was done lately, of this job or of the whole book: one press takes back everything down to there.',
        ],
      },
      {
        heading: 'What stands',
        says: [
          'An issued paper stays issued, and a quotation sent stays sent: the customer has it. What was changed since in another way is shown before anything is taken back.',
          'While you type in an entry the keys take back letters of that entry; once you leave it, the whole of what you wrote.',
        ],
      },
    ],
  },
]
