/** Why each thing that can be found on a gate matters, by the check's id. What to do stands with the finding itself. */
export const checkHelp: Readonly<Record<string, string>> = {
  'ask-engineer':
    'Gates across a road, driven gates, very large ones and those in strong wind can kill when they fall. Posts, hinges and safety gear there belong to somebody licensed for it.',
  'board-not-on-brace':
    'A board that neither brace nor screw reaches between ledges can cup and rattle. Two screws where it crosses the brace hold it flat.',
  'bolt-missing':
    'A hinge that carries the leaf is bolted through, not screwed: screws pull out when somebody hangs on the gate.',
  'bolt-short': 'The bolt must come through washer and nut. Too short, and the thread isn’t filled.',
  'brace-angle':
    'A flat brace pushes sideways more than up. Under some 35° it hardly holds the leaf; a further ledge or a brace in each bay makes it steeper.',
  'brace-no-fit': 'Between these ledges, with these setbacks, there is no room for a brace of this width.',
  'brace-slides':
    'At this angle the brace’s foot tends to slide along the ledge. A notch stops it; so does a steeper brace.',
  'closing-gap-least':
    'In the wettest weeks the boards swell across. Less than this, and the gate binds against its post.',
  'closing-gap-small': 'The edge of a thick leaf swings in an arc and needs more room than a thin one.',
  'closing-gap-wet': 'What is left of the gap when the boards are at their wettest.',
  'drill-missing':
    'The hole asks for a size you haven’t entered among your drills; the nearest one is named.',
  'few-ledges': 'Two ledges on a tall leaf leave the boards unheld for too long: they twist.',
  'frame-thickness':
    'Rebate, boards and ledges must add up to the frame’s thickness, or the face isn’t flush.',
  'ground-gap-least':
    'The gate must clear the ground everywhere it swings, not only where it shuts, and leaves and frost come on top.',
  'hinge-no-rating':
    'Nothing is known of the weight this hinge may carry. Ask its maker before you hang a heavy leaf on it.',
  'hinge-none': 'A gate without hinges can’t be hung; weight and holes can’t be worked out.',
  'ironmongery-meets': 'Two pieces want the same place.',
  'ironmongery-off-leaf': 'It would hang over the edge of the leaf.',
  'ironmongery-on-brace': 'Its holes would come into a brace or stand on it.',
  'joints-press':
    'Boards put together tight in a dry shop press against each other when they swell, and push the gate apart or bow it.',
  'lap-over-board': 'The rebate takes more than the edge board has.',
  'lap-over-stile': 'The rebate takes more than the stile has.',
  'latch-none': 'Nothing holds the gate shut; it will bang in the wind.',
  'latch-thickness': 'The latch is made for leaves of another thickness.',
  'leaf-wide':
    'A wide leaf pulls hard on its upper hinge. Past this a frame or a pair of leaves is common practice.',
  'ledge-heights-shared': 'Two ledges can’t sit at one height.',
  'ledge-narrow': 'A narrow ledge can’t hold two screws in each board with wood enough round them.',
  'ledge-thin': 'A thin ledge holds too little of the screw.',
  'ledge-under-lap': 'A ledge lies where the other leaf laps over.',
  'ledge-under-strip': 'A ledge lies under the strip that closes the joint of the pair.',
  'ledges-overlap': 'Two ledges run into each other.',
  'lock-reach': 'The lock’s bolt or cylinder doesn’t reach through boards and ledge.',
  'movement-unknown':
    'How far this timber moves isn’t known, so the gap between boards can’t be worked out. Enter its movement.',
  'nail-long': 'A nail that comes through the face must be clenched; else somebody is scratched.',
  'no-fixing-fits': 'None of the lengths you have holds enough without coming through.',
  'notch-deep': 'A deep notch leaves little of the ledge where the weight comes down.',
  'notch-end-short':
    'The wood between the notch and the ledge’s end may shear off. Keep the foot further in.',
  'notch-too-deep': 'The notch takes too much of the ledge to be made.',
  'opening-fall':
    'The ground falls across the opening: the gap at one side will be larger than at the other.',
  'opening-head-room': 'Under a head the leaf needs room to be lifted on and off its hinges.',
  'opening-head-wide': 'The opening is wider at the head than at the foot, or the other way round.',
  'opening-out-of-plumb':
    'A hanging post that leans makes the gate swing by itself, and lifts or drops its closing edge.',
  'opening-out-of-square': 'The diagonals differ: a square leaf shows a wedge of light.',
  'opening-taper': 'The widths differ. The leaf is made to the least, and the rest is gap.',
  'pair-on-slope': 'On sloping ground the two leaves of a pair don’t meet at one height.',
  'part-no-size': 'With these sizes a part comes out with nothing left of it.',
  'penetration-small': 'Too little of the screw is in the board to hold it through years of movement.',
  'penetration-structural':
    'For a joint that carries, rules for timber structures ask for more of the screw in the second piece.',
  'pin-past-edge': 'The hinge’s pin lies outside the leaf; the swing is worked out with it there.',
  'shape-eats-rail': 'The top’s shape cuts into the top ledge or rail.',
  'strength-unknown':
    'Without a strength class the brace and the hinge’s pull can’t be held against anything.',
  'swing-ground': 'Somewhere in its swing the foot meets the ground.',
  'timber-durability':
    'Outdoors a timber of low durability rots unless it is treated or kept off the ground.',
  'timber-dust':
    'The dust of some timbers harms: extraction and a mask, and the rules of your country for the workshop.',
  'timber-sapwood': 'Sapwood isn’t durable whatever the heartwood is. Cut it out or treat it.',
  'timber-treated':
    'Treated timber: don’t burn offcuts, don’t breathe the dust, treat every fresh cut. The maker’s sheet says how.',
  'toe-crushes': 'The brace’s foot presses so hard on so small a place that the ledge is crushed.',
  'tongue-bottoms': 'The tongue meets the groove’s bottom before the joint closes.',
  'tongue-driest': 'In the driest weeks the tongue nearly leaves its groove, and daylight shows.',
  'tongue-reach': 'The tongue doesn’t reach the groove with this gap between boards.',
  'top-rise': 'The top rises more than the leaf’s height or ledges allow.',
  'wind-push': 'What the strongest gust pushes the shut leaf with. Posts, hinges and catch have to take it.',
}
