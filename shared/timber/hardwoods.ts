import { fact } from './fact.ts'
import {
  acid,
  coefficientOf,
  durabilityOf,
  dustOf,
  marked,
  metalOf,
  mild,
  tradeDensity,
  unmarked,
  usualStart,
  type ListedTimber,
} from './timberFacts.ts'

const graded = (name: string, how: string) => fact(name, `EN 1912, ${how}, from memory`, 'memory')

/** Sessile oak moves more than pedunculate (9.7 against 8.4 %, the latter from memory), so its values stand for both. */
const sessile = (percent: number) => fact(percent, 'trade data sheet, sessile oak', 'second-hand')
const oakAcross = { tangential: sessile(9.7), radial: sessile(4.5) }
const europeanOak: ListedTimber = {
  name: 'European oak',
  alsoCalled: ['oak', 'English oak'],
  hardwood: true,
  density: tradeDensity(720),
  tangential: coefficientOf(oakAcross.tangential, usualStart),
  radial: coefficientOf(oakAcross.radial, usualStart),
  tangentialShrinkage: oakAcross.tangential,
  radialShrinkage: oakAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('D24', 'lower hardwood grade'),
  durability: durabilityOf('2–4'),
  stainsIron: marked,
  corrodes: acid,
  fixings: metalOf('stainless'),
  dust: dustOf('nose and lungs'),
  changedThrough: false,
}

const remembered = (percent: number, where: string) => fact(percent, `${where}, from memory`, 'memory')
const chestnutAcross = {
  tangential: remembered(6.4, 'European trade tables'),
  radial: remembered(4.3, 'European trade tables'),
}
const sweetChestnut: ListedTimber = {
  name: 'sweet chestnut',
  alsoCalled: ['chestnut'],
  hardwood: true,
  density: tradeDensity(560),
  tangential: coefficientOf(chestnutAcross.tangential, usualStart),
  radial: coefficientOf(chestnutAcross.radial, usualStart),
  tangentialShrinkage: chestnutAcross.tangential,
  radialShrinkage: chestnutAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('D24', 'lower hardwood grade'),
  durability: durabilityOf('2'),
  stainsIron: marked,
  corrodes: acid,
  fixings: metalOf('stainless'),
  dust: dustOf('nose and lungs'),
  changedThrough: false,
}

const irokoAcross = {
  tangential: remembered(3.8, 'Wood Handbook FPL-GTR-190 table 4-4'),
  radial: remembered(2.8, 'Wood Handbook FPL-GTR-190 table 4-4'),
}
const iroko: ListedTimber = {
  name: 'iroko',
  alsoCalled: [],
  hardwood: true,
  density: tradeDensity(660),
  tangential: coefficientOf(irokoAcross.tangential, usualStart),
  radial: coefficientOf(irokoAcross.radial, usualStart),
  tangentialShrinkage: irokoAcross.tangential,
  radialShrinkage: irokoAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('D40', 'tropical hardwood structural grade'),
  durability: durabilityOf('1–2'),
  stainsIron: unmarked,
  corrodes: mild,
  fixings: metalOf('galvanised'),
  dust: dustOf('asthma'),
  changedThrough: false,
}

/** The hardwoods known. */
export const hardwoods: readonly ListedTimber[] = [europeanOak, sweetChestnut, iroko]
