import { describe, expect, test } from 'vitest'
import { braceThrust, hingeCouple, ledgeShare, weightOf } from '../../shared/gate/forces.ts'

const both = (pull: number, share: number) => Math.hypot(pull, share)

describe('hinges of a door', () => {
  test('Halliday and Resnick ch. 12 no. 31, solution sheet: 27 kg, 0.91 m wide, hinges 1.5 m apart pull 80 N', () => {
    const pull = hingeCouple({ weight: 27 * 9.8, centreX: 455, pinInset: 0, spacing: 1500 })
    expect(Math.abs(pull - 80)).toBeLessThan(0.5)
    expect(pull).toBeCloseTo(80.262, 3)
  })

  test('the same sheet: each hinge bears 130 N upright', () => {
    expect(Math.abs(weightOf(27) / 2 - 130)).toBeLessThan(5)
  })

  // Data published, answers worked out by hand.
  test.each([
    [
      'Halliday and Resnick ch. 12: 260 N, 2.4 m wide, hinges 1.6 m apart',
      260,
      2400,
      1600,
      195.0,
      130,
      234.4,
    ],
    ['textbook problem: 30 kg, 0.90 m wide, hinges 1.5 m apart', 294, 900, 1500, 88.2, 147, 171.4],
    [
      'textbook problem: 40 kg at g 9.81, 0.8 m wide, hinges 1.50 m apart',
      392.4,
      800,
      1500,
      104.6,
      196.2,
      222.4,
    ],
    ['Cutnell: 140 N, 0.81 m wide, hinges 2.1 m apart, all on the lower', 140, 810, 2100, 27.0, 140, 142.6],
  ])('%s', (_title, weight, width, spacing, pull, share, resultant) => {
    const found = hingeCouple({ weight, centreX: width / 2, pinInset: 0, spacing })
    expect(Math.abs(found - pull)).toBeLessThanOrEqual(0.06)
    expect(Math.abs(both(found, share) - resultant)).toBeLessThanOrEqual(0.1)
  })

  // From memory of the chapter; the sum confirms it.
  test('OpenStax University Physics 1 ch. 12, swinging door (from memory): 400 N, 1 m wide, hinges 2 m apart pull 100 N', () => {
    const pull = hingeCouple({ weight: 400, centreX: 500, pinInset: 0, spacing: 2000 })
    expect(pull).toBeCloseTo(100, 9)
    expect(both(pull, 200)).toBeCloseTo(223.6, 1)
  })
})

describe('a brace', () => {
  // Plane statics, worked by hand.
  test.each([
    [45, 141.4, 100],
    [60, 115.5, 57.7],
  ])('plane statics: 100 N on a brace at %i° thrusts %f N, %f N along the ledge', (angle, thrust, along) => {
    expect(braceThrust(100, angle)).toBeCloseTo(thrust, 1)
    expect(ledgeShare(braceThrust(100, angle), angle)).toBeCloseTo(along, 1)
  })
})
