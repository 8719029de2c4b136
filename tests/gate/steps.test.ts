import { describe, expect, it } from 'vitest'
import type { Step } from '../../shared/gate/steps/step.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { toHalf } from '../../shared/cutting/cutList.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { designOf, gateWith, withoutBraces } from '../fixtures/gates.ts'
import { framed } from '../fixtures/caseGates.ts'
import { withProposal } from '../ironmongery/hungGates.ts'

const stepsOf = (spec: GateSpec): Step[] => designOf(spec).steps
const titles = (spec: GateSpec, stage?: Step['stage']): string[] =>
  stepsOf(spec)
    .filter((step) => !stage || step.stage === stage)
    .map(({ title }) => title)
const textOf = (spec: GateSpec, title: string): string => {
  const found = stepsOf(spec).find((step) => step.title === title)
  if (!found) throw new Error(`no step '${title}' among ${titles(spec).join(' | ')}`)
  return found.text
}
const cautions = (spec: GateSpec): string =>
  stepsOf(spec)
    .flatMap((step) => step.cautions)
    .join(' ')

const plain = gateWith({})
const pairOf = (top: Partial<GateSpec> = {}) =>
  gateWith(
    { boards: { rip: 'both' } },
    { leaves: 2, size: { from: 'leaf', width: 950, height: 1780, meetingGap: 8 }, ...top },
  )
const stable = gateWith({ size: { height: 2040 } }, { stable: { lowerHeight: 1100, gap: 6 } })
const bowed = gateWith({}, { top: { shape: 'bowed', rise: 120 } })
const notched = gateWith({ braces: { ends: 'notched', notchDepth: 12 } })
const everyKind: [string, GateSpec][] = [
  ['ledged', withoutBraces(plain)],
  ['ledged and braced', plain],
  ['framed', framed()],
  ['a pair', pairOf()],
  ['a pair on a slope', pairOf({ foot: 'follows-ground', site: { slopeAlong: 0.02 } })],
  ['a stable door', stable],
  ['bowed', bowed],
  ['notched', notched],
]

describe('the order of making', () => {
  it.each(everyKind)('of %s comes before that of hanging, each title once', (_, spec) => {
    const steps = stepsOf(spec)
    const first = steps.findIndex(({ stage }) => stage === 'hanging')
    expect(first).toBeGreaterThan(5)
    expect(steps.slice(first).every(({ stage }) => stage === 'hanging')).toBe(true)
    expect(new Set(steps.map(({ title }) => title)).size).toBe(steps.length)
    for (const { text, title } of steps) {
      expect(text.length, title).toBeGreaterThan(10)
      expect(text).not.toMatch(/undefined|NaN|null|Infinity| {2}|\.\./)
    }
  })

  it.each(everyKind)('of %s marks hinge side and top before a brace goes on', (_, spec) => {
    const order = titles(spec).map((title) => title.toLowerCase())
    const mark = order.findIndex((title) => title.includes('mark hinge side and top'))
    const brace = order.findIndex((title) => /cut the braces? and try/.test(title))
    expect(mark).toBeGreaterThan(-1)
    if (brace > -1) expect(mark).toBeLessThan(brace)
  })

  it('squares board ends before cutting to length, by this gate’s own sizes', () => {
    // 1780 and 12 at each end.
    expect(textOf(plain, 'Cut the boards')).toMatch(/1804 mm.*Square one end.*12 mm.*1780 mm/)
  })

  it('rips the board that this gate rips, to its face and by its fence', () => {
    // 950 − 104 − 7 × 112 − 8 × 1 = 54 is left of a board 112 and a tongue of 7 wide: 65 comes off.
    expect(textOf(plain, 'Rip the edge boards')).toContain(
      'Board 9: rip 65 mm off its closing edge, to a face of 54 mm',
    )
  })

  it('lays the hinge side opposite to how the gate is hung, seen on the bench', () => {
    expect(textOf(plain, 'Mark hinge side and top')).toContain('on your right')
    expect(textOf({ ...plain, hung: 'right' }, 'Mark hinge side and top')).toContain('on your left')
    expect(textOf(pairOf(), 'Mark hinge side and top')).toContain('on your left for the second leaf')
  })

  it('tries the brace dry and never glues boards', () => {
    expect(textOf(plain, 'Cut the brace and try it dry')).toContain('foot at the hinge side')
    expect(textOf(plain, 'Lay the boards out, face down')).toContain('Never glue boards')
    expect(textOf(framed(), 'Spring the boards in')).toContain('Never glue boards')
  })

  it('has no brace in a ledged gate, and says what becomes of it', () => {
    expect(titles(withoutBraces(plain)).join()).not.toContain('brace')
    expect(cautions(withoutBraces(plain))).toContain('without a brace drops')
  })

  // L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 86.
  it('of a framed gate leaves the boards 12 mm down from the rail, springs them in and knocks them up', () => {
    expect(textOf(framed(), 'Spring the boards in')).toMatch(/12 mm down.*spring.*knock all up/)
    const order = titles(framed())
    expect(order.indexOf('Put the frame together')).toBeLessThan(order.indexOf('Spring the boards in'))
    expect(textOf(framed(), 'Cut the frame')).toContain('1860 mm')
    expect(textOf(framed(), 'Clean up the edges')).toContain('horns')
  })

  it('chamfers the outer edges once the leaf is together', () => {
    const order = titles(plain)
    expect(textOf(plain, 'Clean up the edges')).toContain('once')
    expect(order.indexOf('Clean up the edges')).toBeGreaterThan(order.indexOf('Fix the brace'))
  })

  it('sets a shaped top out every 50 mm and cuts it after assembly', () => {
    const text = textOf(bowed, 'Set out and cut the top')
    const list = /mm: (.*?)\./.exec(text.replace(/(\d)\.(\d)/g, '$1·$2'))?.[1]?.split(', ') ?? []
    // 0, 50 … 900 and 950.
    expect(list).toHaveLength(20)
    expect(list[0]).toBe('0: 1660')
    expect(list.at(-1)).toBe('950: 1660')
    const order = titles(bowed)
    expect(order.indexOf('Set out and cut the top')).toBeGreaterThan(order.indexOf('Fix the brace'))
  })

  it('gives each board of a shaped top its own length', () => {
    const made = designOf(bowed)
    const text = textOf(bowed, 'Cut the boards')
    made.leaves[0]?.boards.forEach((board, index) =>
      expect(text).toContain(`${index + 1}: ${writeShortMm(toHalf(board.blank))} mm`),
    )
  })

  it('strikes a straight line for a raked top', () => {
    const raked = gateWith({}, { top: { shape: 'raked', rise: 130, high: 'closing' } })
    expect(textOf(raked, 'Set out and cut the top')).toMatch(/from 1650 mm.* to 1780 mm/)
  })

  it('marks a notch by its two faces and chops it to its depth', () => {
    const notch = designOf(notched).leaves[0]?.braces[0]?.notch
    const text = textOf(notched, 'Cut the brace and try it dry')
    expect(text).toContain(`${writeShortMm(notch?.shoulder ?? 0)} mm long`)
    expect(text).toContain(`slope of ${writeShortMm(notch?.slope ?? 0)} mm`)
    expect(text).toContain('12 mm deep')
  })

  it('makes a pair’s leaves together, unless the ground makes them differ', () => {
    expect(titles(pairOf()).filter((title) => /cut the boards/i.test(title))).toHaveLength(1)
    expect(textOf(pairOf(), 'Cut the boards')).toContain('18 boards')
    const sloped = pairOf({ foot: 'follows-ground', site: { slopeAlong: 0.02 } })
    expect(titles(sloped).filter((title) => /cut the boards/i.test(title))).toEqual([
      'First leaf: cut the boards',
      'Second leaf: cut the boards',
    ])
    // 950 × 0.02.
    expect(textOf(sloped, 'First leaf: cut the foot to the ground')).toContain('rises 19 mm')
    expect(textOf(sloped, 'Second leaf: cut the foot to the ground')).toContain('falls 19 mm')
  })

  it('works a pair’s meeting edge so that the first leaf comes away freely', () => {
    expect(textOf(pairOf(), 'Work the meeting edge')).toContain('8 mm stays between them')
    const rebated = (opens: GateSpec['opens']) =>
      textOf(pairOf({ opens, meeting: { edge: 'rebated', lap: 17 } }), 'Work the meeting edge')
    expect(rebated('to-back')).toMatch(
      /lap 17 mm: the first leaf’s board 9 stands 17 mm past .* its face half is cut away.*opens first keeps its lap on the back/,
    )
    expect(rebated('to-face')).toContain('opens first keeps its lap on the face')
    // 2 × 20 and the gap of 8.
    expect(textOf(pairOf({ meeting: { edge: 'strip' } }), 'Work the meeting edge')).toContain('48 mm wide')
  })

  it('shoulders the ledges’ bare-faced tenons on the back, as they are drawn, so that the back comes flush', () => {
    const spec = framed()
    const [boards, ledge] = [spec.boards.section.thickness, spec.ledges.section.thickness]
    const text = textOf(spec, 'Mortise, tenon and rebate')
    expect(text).toContain('shouldered on the back only')
    expect(text).toContain(
      `${boards} mm from the stile’s face, and the ledge comes flush with the stile’s back`,
    )
    const { section } = gateDrawings({ ...spec, hung: 'left' }, designOf(spec), 'mm')
    const tenon = section.marks.find((mark) => mark.kind === 'polygon' && mark.part === 'bottom ledge')
    const zs = tenon?.kind === 'polygon' ? tenon.points.map(([, z]) => z) : []
    expect([Math.min(...zs), Math.max(...zs)]).toEqual([boards, boards + ledge])
    expect(boards + ledge).toBe(spec.frame?.stile.thickness)
    // The tenon's end, a tenon's length behind the shoulder, keeps two thirds of the ledge, against the rebate's plane.
    const tip = tenon?.kind === 'polygon' ? Math.min(...tenon.points.map(([x]) => x)) : 0
    const end = tenon?.kind === 'polygon' ? tenon.points.filter(([x]) => x === tip).map(([, z]) => z) : []
    expect(end[0]).toBe(boards)
    expect(end[1]).toBeCloseTo(boards + (2 / 3) * ledge, 9)
    expect(designOf(spec).figures['frame.tenonThickness']?.value).toBeCloseTo((2 / 3) * ledge, 9)
  })

  it('makes both halves of a stable door and tries them together', () => {
    expect(textOf(stable, 'Try the halves together')).toContain('6 mm packers')
    expect(titles(stable)).toContain('Upper half: fix the brace')
  })

  it('warns of saws, dust, treated timber, lifting, a falling gate and fingers where they belong', () => {
    for (const [, spec] of everyKind)
      for (const word of [
        /Saws/,
        /dust/,
        /treated/i,
        /Lift with two|Heavy for two/,
        /fall and crush/,
        /fingers/i,
      ])
        expect(cautions(spec)).toMatch(word)
    const treated = { ...plain, timbers: { 'European redwood': { treated: true } } }
    expect(stepsOf(treated)[0]?.cautions.join(' ')).toContain('Treated timber: gloves')
  })
})

describe('the order of hanging', () => {
  const hungPlain = withProposal(plain)

  it('looks to services, local codes and licensed practice before posts and public or powered gates', () => {
    const [posts] = stepsOf(plain).filter(({ stage }) => stage === 'hanging')
    expect(posts?.title).toBe('Look at the posts')
    expect(posts?.cautions.join(' ')).toMatch(/cables, pipes.*local codes.*licensed/s)
  })

  it('gives each hinge its height, its line and its holes', () => {
    expect(textOf(hungPlain, 'Fix the hinges to the leaf')).toMatch(
      /197\.5 mm .*bottom ledge; 1582\.5 mm .*top ledge.*7 screw holes 3 mm, no deeper than 45 mm/,
    )
  })

  it('gives the ledges’ lines where no hinge is listed', () => {
    expect(textOf(plain, 'Fix the hinges to the leaf')).toMatch(/197\.5 mm .* and 1582\.5 mm/)
  })

  it('gives latch and lock their heights and holes, a pair its bolts and their sockets', () => {
    expect(textOf(hungPlain, 'Fit latch and lock')).toMatch(/927\.5 mm.*2 keyholes 10 mm, right through/)
    const bolts = textOf(withProposal(pairOf()), 'Fit the bolts')
    expect(bolts).toContain('Second leaf: Lane drop bolt 450')
    // Throw 120 and 10 more; the plate of 55 stands 15 in from the edge of 950.
    expect(bolts).toMatch(/drill 22 mm, 130 mm deep 907\.5 mm \(.*\) from the hanging edge/)
  })

  it('sets the gaps as surveyed, or the usual ones and says so', () => {
    expect(textOf(plain, 'Set the gaps')).toContain('usual gaps')
    const surveyed = gateWith(
      {},
      {
        size: {
          from: 'opening',
          widths: [967, 967, 967],
          heights: [1831, 1831],
          hangingGap: 5,
          closingGap: 12,
          groundGap: 51,
        },
      },
    )
    expect(textOf(surveyed, 'Set the gaps')).toMatch(
      /^5 mm at the hanging edge, 12 mm at the closing edge, 51 mm/,
    )
  })

  // W − p 950, D 48, a 20: √(950² + 68²) − 950 = 2.431; the gap is 2.
  it('bevels the lead edge where the gap is too small, and says so where it is not', () => {
    const tight = (meetingGap: number) =>
      pairOf({ size: { from: 'leaf', width: 950, height: 1780, meetingGap }, site: { pinProud: 20 } })
    expect(textOf(tight(2), 'Bevel the lead edge')).toMatch(
      /meeting edge .*most off the face \(the back leads\)/,
    )
    expect(textOf(tight(3), 'Leave the closing edge square')).toContain(
      'needs 2.4 mm to swing past and has 3 mm',
    )
  })

  // 950 × √(0.03² + 0.04²) = 47.5 and the least gap of 10, at atan(0.04 / 0.03) = 53.1°.
  it('checks the swing over rising ground where it is highest', () => {
    const rising = { ...plain, site: { slopeAlong: 0.03, slopeAcross: 0.04 } }
    expect(textOf(rising, 'Check the swing')).toContain('highest under it at 53.1°; it wants 57.5 mm there')
  })

  it('ends with a last look that a brace has its foot at the hinge side', () => {
    const last = stepsOf(plain).at(-1)
    expect(last?.title).toBe('A last look')
    expect(last?.text).toContain('foot at the hinge side')
  })
})
