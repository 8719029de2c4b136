import * as v from 'valibot'
import { allowance, amount, angle, choice, count, flag, keys, list, size, text } from './specShape.ts'

const section = keys({
  name: text(),
  species: text(60),
  thickness: size(500),
  width: size(1000),
  tongue: v.optional(allowance(100)),
  groove: v.optional(allowance(100)),
})

/** Sizes of a leaf as the joiner gives them. */
const leafSize = keys({
  from: v.literal('leaf'),
  width: size(),
  height: size(),
  meetingGap: v.optional(allowance(100)),
})

const openingSize = keys({
  from: v.literal('opening'),
  widths: v.tuple([size(), size(), size()], 'three widths in mm'),
  heights: v.tuple([size(), size()], 'two heights in mm, hanging side then closing side'),
  hangingGap: allowance(500),
  closingGap: allowance(500),
  meetingGap: v.optional(allowance(100)),
  groundGap: allowance(1000),
  headGap: v.optional(allowance(500)),
})

const top = v.variant(
  'shape',
  [
    keys({ shape: v.literal('level') }),
    keys({ shape: v.literal('raked'), rise: size(), high: choice('hanging', 'closing') }),
    keys({ shape: v.picklist(['bowed', 'dipped']), rise: size() }),
  ],
  'an object whose shape is level, raked, bowed or dipped',
)

const ledgeEnd = v.variant(
  'cut',
  [keys({ cut: v.literal('square') }), keys({ cut: v.picklist(['bevelled', 'splayed']), angle: angle(75) })],
  'an object whose cut is square, bevelled or splayed',
)

const ironmongery = keys({
  id: text(60),
  kind: choice('hinge', 'latch', 'lock', 'bolt', 'handle', 'other'),
  name: text(),
  quantity: count(1, 100),
  massKg: v.optional(amount('a mass in kg', 0, 500)),
  strapLength: v.optional(size()),
  maxLeafMassKg: v.optional(amount('a mass in kg', 0, 5000)),
  side: v.optional(choice('hanging', 'closing')),
  heights: v.optional(list(size(), 20, 'heights in mm')),
})

const timber = keys({
  density: v.optional(amount('a density in kg/m³', 50, 1500)),
  tangential: v.optional(amount('a movement coefficient per 1 %', 0, 0.02)),
  radial: v.optional(amount('a movement coefficient per 1 %', 0, 0.02)),
  shrinkage: v.optional(amount('a total shrinkage in %', 0, 30)),
  strengthClass: v.optional(text(20)),
  durability: v.optional(text(20)),
  treated: v.optional(flag()),
  stainsIron: v.optional(flag()),
  fixings: v.optional(choice('stainless', 'stainless preferred', 'galvanised')),
})

const air = keys({
  tempC: amount('a temperature in °C', -40, 60),
  rhPercent: amount('a relative humidity in %', 0, 100),
})

const saw = keys({
  name: text(60),
  kerf: size(20),
  tooth: allowance(50),
  guideLeft: v.optional(allowance(1000)),
  guideRight: v.optional(allowance(1000)),
})

export const workshopShape = keys({
  saws: list(saw, 20, 'saws'),
  drills: list(size(60), 200, 'drill sizes in mm'),
  clearance: allowance(10),
  leadRule: choice('lateral', 'withdrawal', 'shank-share'),
})

const entries = {
  version: v.literal(1, 'the number 1'),
  construction: choice('ledged', 'ledged-braced', 'framed-ledged-braced'),
  leaves: choice(1, 2),
  hung: choice('left', 'right'),
  opens: v.optional(choice('to-back', 'to-face')),
  openTo: v.optional(amount('an angle in degrees', 1, 270)),
  size: v.variant('from', [leafSize, openingSize], 'an object whose from is leaf or opening'),
  survey: v.optional(
    keys({
      diagonals: v.optional(v.tuple([size(), size()], 'two diagonals in mm')),
      plumb: v.optional(
        v.tuple(
          [amount('mm out of plumb', -500, 500), amount('mm out of plumb', -500, 500)],
          'two lengths in mm',
        ),
      ),
    }),
  ),
  top,
  foot: v.optional(choice('level', 'follows-ground')),
  stable: v.optional(keys({ lowerHeight: size(), gap: allowance(100) })),
  meeting: v.optional(keys({ edge: choice('square', 'rebated', 'strip'), lap: v.optional(allowance(200)) })),
  boards: keys({
    section,
    rip: choice('hanging', 'closing', 'both'),
    tongues: choice('to-closing', 'to-hanging'),
    gap: v.union([allowance(50), v.literal('auto')], "a length in mm from 0 to 50, or 'auto'"),
    endTrim: allowance(500),
  }),
  ledges: keys({
    section,
    topSection: v.optional(section),
    count: choice(2, 3, 'auto'),
    hangingInset: allowance(),
    closingInset: allowance(),
    end: ledgeEnd,
    heights: v.union(
      [v.literal('auto'), list(size(), 3, 'centre heights in mm')],
      "'auto' or a list of centre heights in mm",
    ),
    weather: v.optional(angle(45)),
  }),
  braces: v.optional(
    keys({
      section,
      footSetback: allowance(),
      headSetback: allowance(),
      run: choice('each-bay', 'in-line'),
      ends: choice('flush', 'notched'),
      notchDepth: v.optional(size(500)),
    }),
  ),
  frame: v.optional(
    keys({
      stile: section,
      topRail: section,
      tenon: allowance(500),
      horn: allowance(500),
      rebate: allowance(100),
    }),
  ),
  fixings: keys({
    kind: choice('screw', 'nail'),
    diameter: size(20),
    root: v.optional(size(20)),
    lengths: v.pipe(
      list(size(400), 50, 'lengths in stock, mm'),
      v.minLength(1, 'at least one length in stock, mm'),
    ),
  }),
  ironmongery: list(ironmongery, 50, 'pieces of ironmongery'),
  timbers: v.optional(v.record(text(60), timber, 'timbers by species name')),
  climate: v.optional(
    keys({ shop: air, wettest: air, driest: air, months: v.optional(list(air, 12, 'months')) }),
  ),
  site: v.optional(
    keys({
      pinInset: v.optional(amount('a length in mm', -500, 500)),
      pinProud: v.optional(amount('a length in mm', -500, 500)),
      slopeAlong: v.optional(amount('a slope', -1, 1)),
      slopeAcross: v.optional(amount('a slope', -1, 1)),
      gustMs: v.optional(amount('a wind speed in m/s', 0, 100)),
      personKg: v.optional(amount('a mass in kg', 0, 300)),
    }),
  ),
  workshop: v.optional(workshopShape),
}

/** The shape of a gate's spec, before the rules that tie one key to another (`specRules.ts`). */
export const specShape = keys(entries)

const toCome = v.nullable(size())

const draftSize = v.variant(
  'from',
  [
    keys({ ...leafSize.entries, width: toCome, height: toCome }),
    keys({
      ...openingSize.entries,
      widths: v.tuple([toCome, toCome, toCome], 'three widths in mm'),
      heights: v.tuple([toCome, toCome], 'two heights in mm, hanging side then closing side'),
    }),
  ],
  'an object whose from is leaf or opening',
)

/** A spec on its way: the same, but the sizes may still be missing. */
export const draftShape = keys({ ...entries, size: draftSize })

export type GateSpec = v.InferOutput<typeof specShape>
export type DraftSpec = v.InferOutput<typeof draftShape>
export type Section = v.InferOutput<typeof section>
export type Workshop = v.InferOutput<typeof workshopShape>
export type Saw = Workshop['saws'][number]
export type LedgeEnd = GateSpec['ledges']['end']
export type Timber = NonNullable<GateSpec['timbers']>[string]
export type Ironmongery = GateSpec['ironmongery'][number]
export { section as sectionShape }
