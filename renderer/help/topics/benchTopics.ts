import type { Topic } from '../topic.ts'

/** What help tells of the gate itself: measuring, setting out, hanging. */
export const benchTopics: Topic[] = [
  {
    id: 'gate',
    title: 'Setting the gate out',
    lead: 'Fill in what you know, in any order. The drawing and every figure follow each key.',
    also: 'design drawing sizes form figures check stop caution cut list rip',
    parts: [
      {
        heading: 'The parts of a gate and what they are called here',
        drawing: 'parts',
        says: [
          'Boards stand on the face. Ledges lie across the back; braces slant between them, their feet on the hanging side. The hanging edge carries the hinges, the closing edge the latch.',
        ],
      },
      {
        heading: 'Sizes',
        says: [
          'Type them as you say them: 900, 0.9 m, 35 3/8", 2\' 11 1/2". Under the field stands what was understood; if it wasn’t, nothing is lost and the field says what it takes.',
        ],
      },
      {
        heading: 'The line under the drawing',
        says: [
          'It says how things stand: nothing in the way, something to look at, or what can’t be made. Press it to see each finding with its remedy. A stop means the gate can’t be made as entered; a caution is printed on the card.',
        ],
      },
      {
        heading: 'Where a figure comes from',
        says: ['Press any figure. It shows what went into it, step by step, and where the rule comes from.'],
      },
      {
        heading: 'By hand, on the drawing',
        says: [
          'Press a dimension and type. Point at a part and its line in the cut list lights; point at a line and its part lights.',
        ],
      },
    ],
  },
  {
    id: 'opening',
    title: 'Measuring an opening',
    lead: 'Three widths, two heights, two diagonals and a plumb line: five minutes that spare a second journey.',
    also: 'survey posts plumb diagonal square taper width height',
    parts: [
      {
        heading: 'What to measure',
        drawing: 'opening',
        steps: [
          'The clear width at the foot, the middle and the head, between the posts.',
          'The height at the hanging side and at the closing side, from finished ground.',
          'Both diagonals, corner to corner.',
          'How far each post leans over that height.',
          'How the ground rises, along the opening and where the gate will swing.',
        ],
      },
      {
        heading: 'Before you leave',
        says: [
          'Is the hanging post sound and deep enough for the weight? The program tells the pull on it; what a post and its footing stand is for somebody who knows that ground.',
        ],
      },
    ],
  },
  {
    id: 'boards',
    title: 'Boards, ripping and gaps',
    lead: 'Whole boards seldom make the width. Which to rip and by how much stands largest on the gate page.',
    also: 'tongue groove t&g cover width rip edge gap swelling movement weather',
    parts: [
      {
        heading: 'How the width is made up',
        drawing: 'boards',
        says: [
          'A board counts with what is seen of it, its tongue left out, and a gap beside it. What is left over comes off an edge board, or off both alike.',
        ],
      },
      {
        heading: 'Why a gap',
        says: [
          'Timber swells across in winter and shrinks in summer, hardly at all along. Boards put together tight in a dry shop push the gate apart. The gap follows from the timber and the air it is made in.',
        ],
      },
    ],
  },
  {
    id: 'ledges',
    title: 'Ledge ends',
    lead: 'Square, bevelled through the thickness, or splayed across the width.',
    also: 'bevel splay angle rail end rain',
    parts: [
      {
        heading: 'Which is which',
        drawing: 'ends',
        says: [
          'A bevel slants through the thickness: set the saw’s tilt. A splay slants across the width: set the fence. The card gives the saw’s setting, the long point and the short point.',
        ],
      },
    ],
  },
  {
    id: 'brace',
    title: 'The brace',
    lead: 'Its foot is at the hanging side. The leaf’s own weight then presses it, and it holds.',
    also: 'angle length drop sag thrust notch foot head long points',
    parts: [
      {
        heading: 'The right way round',
        drawing: 'brace',
        says: [
          'Turned the other way it is pulled at its ends, the screws give, and the gate drops. No setting here turns it round.',
        ],
      },
      {
        heading: 'Cutting it',
        steps: [
          'Set the saw to the angle on the card; both ends of a brace between level ledges are alike.',
          'Cut one end, measure the long points, cut the other.',
          'Hold it in place. If it is tight at one corner only, print its ends full size under Papers and lay them on.',
        ],
      },
    ],
  },
  {
    id: 'fixings',
    title: 'Screws and holes',
    lead: 'Holes that let boards move and still hold them.',
    also: 'drill clearance lead countersink screw nail hole slot',
    parts: [
      {
        heading: 'Three sizes',
        says: [
          'The clearance hole through the ledge lets the shank pass. The lead hole in the board gives the thread its bite without splitting. The countersink takes the head. All three are given as drills you own.',
        ],
      },
      {
        heading: 'Where',
        says: [
          'Each board has its screws near its middle line, so that it can swell both ways. The drilling plan on the card says each hole from the hanging edge and from the foot.',
        ],
      },
    ],
  },
  {
    id: 'hanging',
    title: 'Hanging it so that it never drops',
    lead: 'The fitting sheet goes along in the van. It has the weight, the lift, the hinges’ places and the post’s holes.',
    also: 'hinge post fit weight lift packing swing pins',
    parts: [
      {
        heading: 'In order',
        steps: [
          'Check that the posts are as surveyed; a post that moved since changes the gaps.',
          'Two people for anything over 25 kg, or a lifting aid. Prop the leaf before you let go.',
          'Pack the leaf up to its ground gap, mark the hinges’ pins, drill, hang.',
          'Open it slowly all the way: foot clear, edge clear, fingers clear.',
          'Fit the latch with the gate at rest, not lifted.',
        ],
      },
      {
        heading: 'What isn’t a joiner’s work',
        says: [
          'Driven gates, gates on a public way and those a crowd may lean on come under rules of their own, wherever you are. Have them looked at by somebody licensed for it.',
        ],
      },
    ],
  },
  {
    id: 'safety',
    title: 'At the saw, at the bench, on site',
    lead: 'Usual cautions. They don’t stand in for the rules where you work.',
    also: 'dust guard lifting gloves mask treated saw fingers danger',
    parts: [
      {
        heading: 'Saw and dust',
        says: [
          'Guard and riving knife in place, push stick for narrow rips, no gloves at a turning blade. Extraction and a mask: hardwood dust can harm for good.',
        ],
      },
      {
        heading: 'Treated timber',
        says: ['Never burn it. Treat fresh cuts as its maker says. Wash before you eat.'],
      },
      {
        heading: 'A leaf that isn’t hung yet',
        says: ['It falls over in a breath of wind. Lay it flat or tie it; keep children away from it.'],
      },
    ],
  },
]
