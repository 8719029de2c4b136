import type { Topic } from '../topic.ts'

/** What help tells of the book: jobs, prices, papers, timber, the workshop. */
export const bookTopics: Topic[] = [
  {
    id: 'jobs',
    title: 'The job book',
    lead: 'Every job you ever had, and the ones in hand first.',
    also: 'search find list board stage late promised new enquiry old again',
    parts: [
      {
        heading: 'From the first call to a printed card',
        steps: [
          'Start a new job: a name is enough.',
          'Give width and height under Gate; the rest has sensible starts.',
          'Look at the line under the drawing, then go to Papers and print the job card.',
        ],
      },
      {
        heading: 'Finding one',
        says: [
          'Type any part of a name, a town, a number, a note or a size. Several words must all be found. Arrow keys walk down the list, Enter opens.',
        ],
      },
      {
        heading: 'The same gate again',
        says: [
          'Open the old job, or find it in the list, and make the same again: a new job at its old sizes and today’s prices. The old one stays as it is.',
        ],
      },
    ],
  },
  {
    id: 'job',
    title: 'One job',
    lead: 'A job is one page. Its stages run along the top, from enquiry to hung; what the stage wants next stands beside them.',
    also: 'stage customer notes take out file',
    parts: [
      {
        heading: 'Its parts',
        says: [
          'Gate: sizes and drawing. Price: what it comes to and what the customer was sent. Papers: everything that is printed. Customer: who, where, when. Notes: what was said and seen, by day, with photographs.',
        ],
      },
      {
        heading: 'Nothing to press to keep it',
        says: [
          'What you type is kept within a second; the time stands at the top right. Two windows may work on one job: each sees what the other did, and where both wrote in one field you are asked.',
        ],
      },
    ],
  },
  {
    id: 'price',
    title: 'Pricing and quoting',
    lead: 'The estimate is worked out from the gate: timber, ironmongery, fixings, finish, time.',
    also: 'estimate quotation quote accept deposit tax profit version discount',
    parts: [
      {
        heading: 'From estimate to yes',
        steps: [
          'Look through the lines; write over an amount, or add lines of your own.',
          'Make a further version if the customer may want oak, or another construction.',
          'Issue the quotation and send it as you always do. It is frozen: the same paper can be printed in ten years.',
          'When they say yes, accept it with the day and how they said it.',
        ],
      },
      {
        heading: 'When prices rise',
        says: [
          'A quotation stands until its day is over. Under Prices you see which open ones a rise would touch, and by how much.',
        ],
      },
    ],
  },
  {
    id: 'took',
    title: 'What it really took',
    lead: 'Hours and timber as they were, set against what you reckoned.',
    also: 'hours time afterwards compare estimate standard',
    parts: [
      {
        heading: 'Why bother',
        says: [
          'After a dozen jobs the standard times in Workshop can be set right by what happened, and the next price is nearer.',
        ],
      },
    ],
  },
  {
    id: 'papers',
    title: 'Papers',
    lead: 'What you see is what is printed, page for page.',
    also: 'print card pdf labels full size template fitting sheet issue reprint copy week',
    parts: [
      {
        heading: 'Issuing',
        says: [
          'A paper that is issued is kept to the last dot and can be printed again at any time. Until then it carries a draft mark. A change in the gate asks for a new issue; both stay, and what differs can be seen.',
        ],
      },
      {
        heading: 'Full-size sheets',
        says: [
          'Print at true size, no fitting to the page. Measure the two 100 mm lines on the sheet; if your printer is out, say so in Workshop and print again.',
        ],
      },
      {
        heading: 'The week’s cards',
        says: ['From the job list: all cards promised in a week, made in one go. Stop at any time.'],
      },
    ],
  },
  {
    id: 'prices',
    title: 'Prices',
    lead: 'What things cost you, from whom, since when. Nothing is written over: the history stays.',
    also: 'price list merchant import rise percent history item supplier',
    parts: [
      {
        heading: 'A merchant’s list',
        steps: [
          'Choose the file you were sent.',
          'Say what each column holds; the first rows show whether it is right.',
          'Look at what is new, dearer, cheaper and not found.',
          'Take the prices over. Open quotations that it touches are named.',
        ],
      },
      {
        heading: 'A rise in per cent',
        says: ['Choose the things, give the per cent, see what it does, take it over.'],
      },
    ],
  },
  {
    id: 'timber',
    title: 'Ordering timber',
    lead: 'The cheapest lengths for one gate or for all the accepted jobs, with the proof that nothing is cheaper.',
    also: 'order buy lengths merchant cutting plan waste receive',
    parts: [
      {
        heading: 'From jobs to timber',
        steps: [
          'Choose the jobs.',
          'Look at each length and how it is cut; what the rack gives is taken first.',
          'Place the order and print it. The jobs are marked.',
          'When it comes, tick what came. When you cut, book the offcuts in with their place.',
        ],
      },
      {
        heading: 'Proven',
        says: [
          'means that no other choice of lengths costs less. Where time ran out, it says how much dearer it can be at most.',
        ],
      },
    ],
  },
  {
    id: 'rack',
    title: 'The rack',
    lead: 'Offcuts worth keeping: what, how long, where, from which job.',
    also: 'offcut stock take count place piece',
    parts: [
      {
        heading: 'So that it is found again',
        drawing: 'rack',
        says: [
          'Write the length on the end and the place in the book. A stock-take goes through one section at a time: tick what is there.',
        ],
      },
    ],
  },
  {
    id: 'workshop',
    title: 'The workshop',
    lead: 'What you have and how you like things. Every new job starts from it; old jobs keep what they were made with.',
    also: 'settings saw drill name unit paper section money tax times printer logo',
    parts: [
      {
        heading: 'Worth ten minutes at the start',
        says: [
          'Name, saws with their kerf, the drills you own, the sections you buy, your hourly rate. Everything else can wait.',
        ],
      },
    ],
  },
  {
    id: 'keeping',
    title: 'Copies of the book',
    lead: 'Made every day by itself. Those on this disk don’t help when the disk dies: back up to a stick now and then.',
    also: 'backup back up restore usb stick copy lost damage bring back',
    parts: [
      {
        heading: 'Back up',
        steps: [
          'Put a stick in.',
          'Workshop, Copies of the book: back up now, and choose it.',
          'Wait for “safe to remove”: the copy has been read back by then.',
        ],
      },
      {
        heading: 'Bring one back',
        says: [
          'Look inside first: how many jobs, the last change. The book it replaces is kept beside it, so that you can go back.',
        ],
      },
    ],
  },
  {
    id: 'keys',
    title: 'Keys',
    lead: 'Everything can be done without the mouse. On a Mac, Cmd stands for Ctrl.',
    also: 'keyboard shortcut ctrl cmd escape tab undo',
    parts: [
      {
        heading: 'Everywhere',
        says: [
          'F1: help for the field in hand. F2 or Ctrl+K: a list of everything that can be done, and every job, by a few letters.',
          'Ctrl+N: start a new job. Ctrl+1 to Ctrl+4: jobs, prices, timber, workshop, in the program’s own window.',
          'Tab and Shift+Tab: from entry to entry. Enter: keep what was typed and go on. Esc: out of the entry, then back.',
          'Ctrl+Enter: press the filled button of what you are at.',
          'Ctrl+Z: take back what you did last. Ctrl+Y: do it again.',
        ],
      },
      {
        heading: 'Straight to a job',
        says: [
          'In the list behind F2, say what is to be done and with which job: “quote marsh”, “measure hatch”, “print 1 marsh” for its first card. Enter goes to the very thing.',
        ],
      },
      {
        heading: 'In the job book',
        says: ['/ or Ctrl+F: into the search. Arrow down and up: along the list. Enter: open.'],
      },
    ],
  },
]
