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

/** Shrinkages of European timbers that the Wood Handbook doesn't list. */
const europeanShrinkage = (percent: number) => fact(percent, 'European trade tables, from memory', 'memory')

const handbookShrinkage = (percent: number) =>
  fact(percent, 'Wood Handbook FPL-GTR-190 table 4-3, p. 4-6', 'published')

const graded = (name: string, how: string) => fact(name, `EN 1912, ${how}, from memory`, 'memory')

const redwoodAcross = { tangential: europeanShrinkage(8.3), radial: europeanShrinkage(5.2) }
const europeanRedwood: ListedTimber = {
  name: 'European redwood',
  alsoCalled: ['redwood', 'Scots pine', 'pine'],
  hardwood: false,
  density: tradeDensity(510),
  tangential: coefficientOf(redwoodAcross.tangential, usualStart),
  radial: coefficientOf(redwoodAcross.radial, usualStart),
  tangentialShrinkage: redwoodAcross.tangential,
  radialShrinkage: redwoodAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('C16', 'general structural grade'),
  durability: durabilityOf('3–4'),
  stainsIron: unmarked,
  corrodes: mild,
  fixings: metalOf('galvanised'),
  dust: dustOf('ordinary'),
  changedThrough: false,
}

const whitewoodAcross = { tangential: europeanShrinkage(8.0), radial: europeanShrinkage(3.9) }
const europeanWhitewood: ListedTimber = {
  name: 'European whitewood',
  alsoCalled: ['whitewood', 'Norway spruce', 'spruce'],
  hardwood: false,
  density: tradeDensity(470),
  tangential: coefficientOf(whitewoodAcross.tangential, usualStart),
  radial: coefficientOf(whitewoodAcross.radial, usualStart),
  tangentialShrinkage: whitewoodAcross.tangential,
  radialShrinkage: whitewoodAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('C16', 'general structural grade'),
  durability: durabilityOf('4'),
  stainsIron: unmarked,
  corrodes: mild,
  fixings: metalOf('galvanised'),
  dust: dustOf('ordinary'),
  changedThrough: false,
}

const douglasAcross = { tangential: handbookShrinkage(7.6), radial: handbookShrinkage(4.8) }
const douglasFir: ListedTimber = {
  name: 'Douglas-fir',
  alsoCalled: ['Douglas fir'],
  hardwood: false,
  density: fact(545, 'Oregon State University wood data, coast type, air-dry', 'second-hand'),
  tangential: fact(
    0.00267,
    'Wood Handbook FPL-GTR-190 table 13-5, coast type, as trade tables cite it',
    'second-hand',
  ),
  radial: coefficientOf(douglasAcross.radial, usualStart),
  tangentialShrinkage: douglasAcross.tangential,
  radialShrinkage: douglasAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('C14', 'British-grown, general structural grade'),
  durability: durabilityOf('3–4'),
  stainsIron: marked,
  corrodes: mild,
  fixings: metalOf('stainless preferred'),
  dust: dustOf('ordinary'),
  changedThrough: false,
}

const larchAcross = { tangential: europeanShrinkage(8.2), radial: europeanShrinkage(4.1) }
const europeanLarch: ListedTimber = {
  name: 'European larch',
  alsoCalled: ['larch'],
  hardwood: false,
  density: tradeDensity(590),
  tangential: coefficientOf(larchAcross.tangential, usualStart),
  radial: coefficientOf(larchAcross.radial, usualStart),
  tangentialShrinkage: larchAcross.tangential,
  radialShrinkage: larchAcross.radial,
  movementStart: usualStart,
  strengthClass: graded('C16', 'general structural grade'),
  durability: durabilityOf('3–4'),
  stainsIron: unmarked,
  corrodes: mild,
  fixings: metalOf('stainless preferred'),
  dust: dustOf('ordinary'),
  changedThrough: false,
}

/** Redcedar starts to shrink later: with 30 % its movement would come out a quarter too small. */
const cedarStart = fact(22, 'Wood Handbook FPL-GTR-190 table 13-5, footnote, from memory', 'memory')
const cedarAcross = { tangential: handbookShrinkage(5.0), radial: handbookShrinkage(2.4) }
const westernRedcedar: ListedTimber = {
  name: 'western redcedar',
  alsoCalled: ['western red cedar', 'redcedar', 'cedar'],
  hardwood: false,
  density: tradeDensity(390),
  tangential: coefficientOf(cedarAcross.tangential, cedarStart),
  radial: coefficientOf(cedarAcross.radial, cedarStart),
  tangentialShrinkage: cedarAcross.tangential,
  radialShrinkage: cedarAcross.radial,
  movementStart: cedarStart,
  strengthClass: graded('C14', 'general structural grade'),
  durability: durabilityOf('2–3'),
  stainsIron: marked,
  corrodes: acid,
  fixings: metalOf('stainless'),
  dust: dustOf('asthma'),
  changedThrough: false,
}

const makerShrinkage = (percent: number) => fact(percent, 'makers’ data, from memory', 'memory')
const acetylatedAcross = { tangential: makerShrinkage(1.5), radial: makerShrinkage(0.7) }
const acetylatedPine: ListedTimber = {
  name: 'acetylated pine',
  alsoCalled: ['acetylated radiata pine'],
  hardwood: false,
  density: tradeDensity(510),
  tangential: coefficientOf(acetylatedAcross.tangential, usualStart),
  radial: coefficientOf(acetylatedAcross.radial, usualStart),
  tangentialShrinkage: acetylatedAcross.tangential,
  radialShrinkage: acetylatedAcross.radial,
  movementStart: usualStart,
  strengthClass: fact('C16', 'makers’ data, the lower usual class, from memory', 'memory'),
  durability: durabilityOf('1'),
  stainsIron: unmarked,
  corrodes: acid,
  fixings: metalOf('stainless'),
  dust: dustOf('ordinary'),
  changedThrough: true,
}

/** The softwoods known, acetylated pine among them. */
export const softwoods: readonly ListedTimber[] = [
  europeanRedwood,
  europeanWhitewood,
  douglasFir,
  europeanLarch,
  westernRedcedar,
  acetylatedPine,
]
