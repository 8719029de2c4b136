/** What each entry of the gate's form asks for, by the path of its field; a star stands for a number or a name. */
export const gateFields: Readonly<Record<string, string>> = {
  title:
    'What you call this gate, as you would find it again: “side gate, Marsh Lane”. It stands on every paper.',
  unit: 'Whether this job is shown in millimetres or inches. You may type either at any time; only what is shown changes.',
  construction:
    'How the gate is built. Ledged: boards on rails alone, for small hatches. Ledged and braced: the usual garden gate. Framed: stiles and a top rail round the boards, for wide or heavy leaves.',
  leaves:
    'One leaf or a pair that meets in the middle. For a pair the opening is shared between two leaves alike.',
  'size.from':
    'Give the leaf’s own sizes when it is to match an old gate, or the opening’s when you have measured between the posts; gaps are then taken off for you.',
  'size.width':
    'The finished leaf, hanging edge to closing edge. Type it as you measure it: 900, 35 3/8", 2\' 11 1/2".',
  'size.height':
    'The finished leaf at its hanging edge, foot to top. Anything the top’s shape adds is asked for below.',
  'size.widths.*':
    'The clear opening at the foot, the middle and the head. Measure all three: posts are seldom upright. The least one sets the leaf.',
  'size.heights.*':
    'The height of the opening at the hanging side and at the closing side, from the finished ground or threshold.',
  'size.hangingGap':
    'The gap between post and leaf on the hanging side: room for the knuckle of the hinge. 6 to 10 mm is common practice.',
  'size.closingGap':
    'The gap on the closing side, for swelling in winter and for fingers and catch. The program warns where the boards could close it.',
  'size.meetingGap': 'The gap between the two leaves of a pair where they meet.',
  'size.groundGap':
    'How far the foot stays off the ground. Rising ground in the way of the swing needs more; 50 mm is common practice.',
  'size.headGap': 'The gap under a lintel or head. Leave it empty where the opening is open above.',
  'survey.diagonals.*':
    'Corner to corner across the opening, both ways. If they differ, it is out of square, and by how much is worked out.',
  'survey.plumb.*':
    'How far each post leans over the height, by a plumb line: into the opening counts as plus. A leaning hanging post makes a gate swing by itself.',
  'top.shape':
    'Level, raked (sloping to one side), bowed (high in the middle) or dipped (low in the middle).',
  'top.rise': 'How much higher the high point is than the low one.',
  'top.high':
    'Which edge is the high one of a raked top. High at the hanging edge leaves more room for the hinge.',
  foot: 'Cut the foot level, or let it follow the slope of the ground under a closed gate.',
  'stable.lowerHeight': 'For a door in two halves: the height of the lower one.',
  'stable.gap': 'For a door in two halves: the gap between them.',
  'meeting.edge': 'How the two leaves meet: square edges, a rebate cut in both, or a strip planted on one.',
  'meeting.lap': 'How far the rebate or the strip laps over the other leaf.',
  hung: 'Which side carries the hinges, looking at the face, where the boards are. The drawing turns round; no figure changes.',
  opens: 'To the back, where the ledges are, or to the face. It decides which edge needs room to swing.',
  openTo:
    'How far it must open, in degrees. 90 is square to the opening; past that the closing edge needs more room.',
  'boards.section':
    'The board the merchant sells: thickness, and the width that is seen once tongue is in groove. Pick one your workshop keeps, or enter its sizes.',
  'boards.rip':
    'Which edge board is sawn narrower when whole boards don’t make the width: the hanging one, the closing one, or both alike so that the gate looks even.',
  'boards.tongues':
    'Which way the tongues point. With tongues to the closing edge, each board is pushed on to the last.',
  'boards.gap':
    'The gap left between boards when the gate is made, so that they can swell in winter. “As the weather has it” works it out from timber and air.',
  'boards.endTrim': 'What is cut off the ends of the boards to square them. It is bought, not seen.',
  'ledges.section':
    'The rails across the back. Thickness takes the screws; width must hold two screws in every board.',
  'ledges.topSection':
    'Another section for the top ledge, where it is to be lighter or wider than the others.',
  'ledges.count':
    'How many rails: two for a low gate, three for anything near head height. “As the height has it” follows common practice.',
  'ledges.heights':
    'Where the middle of each ledge sits above the foot. Left to the rule, they are spread so that the braces lie well.',
  'ledges.heights.*':
    'Where the middle of this ledge sits above the foot. It should come where a hinge’s strap can be bolted through it.',
  'ledges.hangingInset':
    'How far the ledges stop short of the hanging edge: the stop or the post’s rebate needs this.',
  'ledges.closingInset':
    'How far the ledges stop short of the closing edge, so that the gate can shut against its stop.',
  'ledges.end':
    'How ledge ends are cut: square; bevelled, slanting through the thickness so that water and fingers run off; or splayed across the width.',
  'ledges.end.angle': 'The angle of the bevel or splay, from square. 45° is common practice.',
  'ledges.weather': 'The slope on a ledge’s upper edge, so that rain runs off it and not into the boards.',
  'braces.section':
    'The slanting timbers that hold the leaf up. Their feet are always on the hanging side: they are pressed, never pulled.',
  'braces.footSetback':
    'How far the brace’s foot stays back from the hanging end of the ledge, so that the thrust doesn’t split the ledge’s end off.',
  'braces.headSetback': 'How far the brace’s head stays back from the closing end of the ledge above.',
  'braces.run': 'A brace in each bay at its own angle, or all in one line from foot to top.',
  'braces.ends':
    'Flush: cut to lie against the ledge. Notched: let into the ledge, which carries more weight.',
  'braces.notchDepth':
    'How deep the brace is let into the ledge. Too deep weakens the ledge; the program says when.',
  'frame.stile': 'The two uprights of a framed gate.',
  'frame.topRail': 'The top rail of a framed gate, as thick as the stiles.',
  'frame.tenon': 'The length of the tenons. Longer than the stile is wide goes right through.',
  'frame.horn': 'What is left on the stiles past the rails while gluing up, sawn off afterwards.',
  'frame.rebate': 'How deep the boards are let into the frame.',
  'fixings.kind':
    'Screws can be drawn when a board is changed; nails clenched over are the old way and can’t.',
  'fixings.diameter': 'The thickness of the shank. 4.5 to 5 mm suits ordinary boards: common practice.',
  'fixings.root': 'The thickness between the threads, if you know it. The lead hole follows from it.',
  'fixings.lengths':
    'The lengths you have or can buy. The program takes the longest that doesn’t come through the face.',
  finish:
    'What the gate is finished with. It is priced by the face, and the boards are finished before they are put together.',
  coats: 'How many coats.',
  ironmongery:
    'Hinges, latch, lock, bolts. Pick from the list or enter your own; each is placed on the leaf and its holes are worked out.',
  'ironmongery.*.name': 'What the piece is called, as the merchant has it.',
  'ironmongery.*.quantity': 'How many of them go on the gate.',
  'ironmongery.*.heights':
    'How high each sits above the foot. A hinge should sit where a ledge is behind it.',
  'ironmongery.*.massKg': 'What one weighs. It counts in the weight of the leaf.',
  'ironmongery.*.maxLeafMassKg':
    'The heaviest leaf its maker allows for, a pair of them. The program holds the leaf’s weight against it.',
  'ironmongery.*.side': 'Which edge it sits at.',
  'ironmongery.*.strapLength':
    'How long the strap is. A third to a half of the leaf’s width is common practice.',
  timbers:
    'What is known of each timber: weight, movement, strength, durability. Standard values say where they come from; write over what you know better.',
  'timbers.*':
    'A value of this timber that you know better than the book does. It counts for this job alone.',
  climate:
    'The air the boards are put together in, and the driest and wettest they will meet. Movement over the year follows from it.',
  'climate.*':
    'Temperature and how damp the air is, in per cent. Outdoor air at home is dampest in winter, in your shop when it isn’t heated.',
  'site.pinInset': 'How far the hinge’s pin lies in from the leaf’s edge.',
  'site.pinProud':
    'How far the hinge’s pin stands out from the leaf’s back. It decides whether the edge clears the post.',
  'site.slopeAlong':
    'How the ground rises along the opening: mm in a metre, up towards the closing side is plus.',
  'site.slopeAcross': 'How the ground rises where the gate swings. The foot must clear it when open.',
  'site.gustMs':
    'The strongest gust to count with, from your local code or weather office. The program says what it pushes with; posts and fixings on an exposed site are an engineer’s.',
  'site.personKg': 'The weight of somebody who may swing on it. Children do.',
  workshop: 'Your own saws and drills, as they stand for this job.',
  'workshop.*':
    'A saw’s kerf, the distance from its guide, or a drill you have. Holes are given as drills you own.',
}

/** The entries that any timber's section asks for, by the last word of their path. */
export const sectionFields: Readonly<Record<string, string>> = {
  name: 'What you call this section: “ex 25 × 125 T&G V”.',
  species: 'The timber it is. Weight, movement and durability follow from it.',
  thickness: 'As planed, not as sawn: what you measure with calipers.',
  width: 'As planed. Of a board it is what is seen: the tongue is left out.',
  tongue: 'How far the tongue stands out.',
  groove: 'How deep the groove is: at least a little more than the tongue, or the joint can’t close.',
}
