import * as v from 'valibot'
import type { BuyingPlan } from '../cutting/buyingPlan/planModel.ts'

/** Past any plan for two hundred jobs: what a plan that comes in may hold. */
const [mostRows, mostCases] = [20_000, 200_000]

const number = v.pipe(v.number('a number'), v.finite('a number'))
const whole = v.pipe(number, v.integer('a whole number'), v.minValue(0, 'a whole number from 0'))
const source = v.picklist(['merchant', 'rack'], 'merchant or rack')
const text = v.pipe(v.string('a text'), v.maxLength(300, 'a text of up to 300 characters'))
const many = <T extends v.GenericSchema>(of: T) =>
  v.pipe(v.array(of, 'a list'), v.maxLength(mostRows, `a list of up to ${mostRows}`))

const offer = { from: source, stock: number, pence: whole }

const duals = many(number)
const list = v.strictObject({
  most: whole,
  cuts: many(v.strictObject({ times: many(whole), over: whole })),
  values: many(v.strictObject({ duals, slots: many(number) })),
  cases: v.pipe(
    v.array(
      v.union(
        [
          v.strictObject({ by: whole }),
          v.strictObject({ offer: whole, upTo: whole }),
          v.strictObject({ pattern: many(whole), of: whole, upTo: whole }),
        ],
        'a case of a list',
      ),
      'a list',
    ),
    v.maxLength(mostCases, `a list of up to ${mostCases}`),
  ),
})

const proof = many(
  v.union(
    [v.strictObject({ offer: whole, upTo: whole }), v.strictObject({ duals, list: v.optional(list) })],
    'a row of what shows the bound',
  ),
)

const cutLength = v.strictObject({
  ...offer,
  section: text,
  count: whole,
  cuts: many(v.strictObject({ length: number, mark: v.optional(text) })),
  offcut: number,
})

const certificate = v.strictObject({
  section: text,
  cost: whole,
  bound: whole,
  parts: many(number),
  offers: many(many(v.strictObject(offer))),
  proof,
})

/** Reads a buying plan that comes from outside, strictly. Whether it holds is for the checker of plans. */
export const planShape = v.strictObject({
  version: v.literal(1, 'the number 1'),
  status: v.picklist(['proven', 'best-found'], 'proven or best-found'),
  cost: whole,
  bound: whole,
  waste: number,
  patterns: whole,
  shown: v.strictObject({
    cost: v.boolean('yes or no'),
    waste: v.literal(false, 'no'),
    patterns: v.literal(false, 'no'),
  }),
  lengths: many(cutLength),
  certificate: many(certificate),
}) satisfies v.GenericSchema<unknown, BuyingPlan>
