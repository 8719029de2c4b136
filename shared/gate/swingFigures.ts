import { geometry, type Figure, type Figures } from './figures.ts'
import { greatestRise, groundClearance, type GroundSwing } from './groundSwing.ts'
import {
  bevelledClosingGap,
  farCorners,
  leadEdgeBevel,
  leastClosingGap,
  reachOf,
  type Corner,
  type Swing,
} from './swing.ts'
import { figure } from './worked.ts'

/** The corner that needs the most gap; one in front of the pin's line needs none, so it counts as on it. */
const worst = (swing: Swing): Corner =>
  farCorners(swing)
    .map(({ out, behind }) => ({ out, behind: Math.max(0, behind) }))
    .reduce((far, corner) =>
      Math.hypot(corner.out, corner.behind) > Math.hypot(far.out, far.behind) ? corner : far,
    )

function gapFigure(swing: Swing): Figure {
  const { out, behind } = worst(swing)
  return figure(leastClosingGap(swing), 'mm', {
    formula: '√(corner out² + corner behind²) − reach, never under 0',
    inputs: { 'corner out': out, 'corner behind': behind, reach: reachOf(swing) },
    source: geometry,
  })
}

function bevelFigures(swing: Swing): Figures {
  const bevel = leadEdgeBevel(swing)
  if (!bevel) return {}
  const proud = Math.max(0, swing.pinProud)
  return {
    'swing.bevel': figure(bevel.angle, '°', {
      formula: 'atan((reach − √(reach² + proud² − behind²)) / thickness)',
      inputs: {
        reach: reachOf(swing),
        proud,
        behind: Math.max(proud, bevel.over + swing.pinProud),
        thickness: bevel.over,
      },
      source: geometry,
    }),
    'swing.bevelledGap': figure(bevelledClosingGap(swing), 'mm', {
      formula: '√(reach² + proud²) − reach, or what the ends of the ledges need where that is more',
      inputs: { reach: reachOf(swing), proud, 'ledges stop short by': swing.closingInset },
      source: geometry,
    }),
  }
}

/** The closing gap with and without a bevel as worked figures: 'swing.gap', 'swing.bevel', 'swing.bevelledGap'. */
export const swingFigures = (swing: Swing): Figures => ({
  'swing.gap': gapFigure(swing),
  ...bevelFigures(swing),
})

/** The clearance over the ground and the angle where it is worst: 'swing.ground', 'swing.groundAngle'. */
export function groundFigures(swing: GroundSwing, leastGap: number): Figures {
  const { width, slope, openTo, followsGround } = swing
  const { rise, angle } = greatestRise(swing)
  const from = followsGround ? ' − slope along' : ''
  const inputs = {
    width,
    'slope along': slope.along,
    'slope across': slope.across,
    'opens to °': openTo,
  }
  return {
    'swing.ground': figure(groundClearance(swing, leastGap), 'mm', {
      formula: `greatest of width × (slope along × cos α + slope across × sin α${from}), never under 0, + least gap`,
      inputs: { ...inputs, 'greatest rise': rise, 'least gap': leastGap },
      source: geometry,
    }),
    'swing.groundAngle': figure(angle, '°', {
      formula:
        'atan(slope across / slope along) where the leaf opens past it, else the worse end of the opening',
      inputs,
      source: geometry,
    }),
  }
}
