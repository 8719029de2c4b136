import { fact, type Fact } from './fact.ts'

/**
 * A strength class: characteristic strengths and stiffnesses in N/mm² and densities in kg/m³, names as in the standard
 * (bending, tension and compression along and across the grain, shear).
 */
export type StrengthClass = {
  name: string
  bending: number
  tension: number
  compression: number
  compressionAcross: number
  shear: number
  stiffness: number
  stiffnessLow: number
  shearStiffness: number
  densityLow: number
  density: number
}

type Row = readonly [string, ...number[]]

/** EN 338:2016 table 1. Columns: f_m,k f_t,0,k f_c,0,k f_c,90,k f_v,k E_0,mean E_0,05 G_mean ρ_k ρ_mean. */
const rows: readonly Row[] = [
  ['C14', 14, 7.2, 16, 2.0, 3.0, 7000, 4700, 440, 290, 350],
  ['C16', 16, 8.5, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370],
  ['C18', 18, 10, 18, 2.2, 3.4, 9000, 6000, 560, 320, 380],
  ['C20', 20, 11.5, 19, 2.3, 3.6, 9500, 6400, 590, 330, 400],
  ['C22', 22, 13, 20, 2.4, 3.8, 10000, 6700, 630, 340, 410],
  ['C24', 24, 14.5, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420],
  ['C27', 27, 16.5, 22, 2.5, 4.0, 11500, 7700, 720, 360, 430],
  ['C30', 30, 19, 24, 2.7, 4.0, 12000, 8000, 750, 380, 460],
  ['D24', 24, 14, 21, 4.9, 3.7, 10000, 8400, 630, 485, 580],
  ['D30', 30, 18, 24, 5.3, 3.9, 11000, 9200, 690, 530, 640],
  ['D40', 40, 24, 27, 5.5, 4.2, 13000, 10900, 810, 550, 660],
]

const classOf = ([name, ...values]: Row): StrengthClass => {
  const at = (place: number): number => {
    const value = values[place]
    if (value === undefined) throw new RangeError(`strength class ${name} has no value at ${place}`)
    return value
  }
  return {
    name,
    bending: at(0),
    tension: at(1),
    compression: at(2),
    compressionAcross: at(3),
    shear: at(4),
    stiffness: at(5),
    stiffnessLow: at(6),
    shearStiffness: at(7),
    densityLow: at(8),
    density: at(9),
  }
}

/** The strength classes known, softwoods first. */
export const strengthClasses: readonly StrengthClass[] = rows.map(classOf)

const byName = new Map(strengthClasses.map((one) => [one.name, one]))

/** A strength class by its name, with its source; undefined when it isn't known. Capitals don't matter: 'c24' is C24. */
export function strengthClass(name: string): Fact<StrengthClass> | undefined {
  const found = byName.get(name.trim().toUpperCase())
  return found && fact(found, 'EN 338:2016 table 1', 'second-hand')
}

/** How long a load stays on, in the standard's words. The leaf's own weight is permanent; a gust is instantaneous. */
export type LoadDuration = 'permanent' | 'long' | 'medium' | 'short' | 'instantaneous'

/** How damp the timber's place is: 1 heated indoors, 2 under cover, 3 out in the weather. A gate is 3. */
export type ServiceClass = 1 | 2 | 3

const underCover = { permanent: 0.6, long: 0.7, medium: 0.8, short: 0.9, instantaneous: 1.1 }
const inWeather = { permanent: 0.5, long: 0.55, medium: 0.65, short: 0.7, instantaneous: 0.9 }

/** k_mod for solid timber: EN 1995-1-1 table 3.1. Permanent load on a gate in the weather: 0.5. */
export const loadFactor = (service: ServiceClass, duration: LoadDuration): number =>
  (service === 3 ? inWeather : underCover)[duration]

/** γ_M for solid timber and its connections: EN 1995-1-1 table 2.3. */
export const materialFactor = 1.3
