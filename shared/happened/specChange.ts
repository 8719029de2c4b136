import type { LengthUnit } from '../job/job.ts'
import { writeLength } from '../units/writeLength.ts'
import { entryName, measureAt, specWord } from './entryNames.ts'

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const plain = (value: number): string => String(Math.round(value * 100) / 100)

function figure(path: string, value: number, unit: LengthUnit): string {
  const measure = measureAt(path)
  if (measure === 'angle') return `${plain(value)}°`
  return measure === 'length' && Math.abs(value) < 1e6 ? writeLength(value, unit) : plain(value)
}

const named = (value: unknown): value is { name: string } =>
  isRecord(value) && typeof value['name'] === 'string'

const piece = (value: { name: string }): string =>
  'quantity' in value && typeof value.quantity === 'number' ? `${value.quantity} × ${value.name}` : value.name

/** One thing of a spec in words; undefined for what has too many parts to be said in a few. */
function told(path: string, value: unknown, unit: LengthUnit): string | undefined {
  if (value === null || value === undefined) return 'none'
  if (typeof value === 'number') return figure(path, value, unit)
  if (typeof value === 'string') return specWord(path, value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (named(value)) return piece(value)
  if (Array.isArray(value)) {
    const parts = value.map((one) => told(path, one, unit))
    if (parts.length > 8 || parts.some((part) => part === undefined)) return undefined
    return parts.length === 0 ? 'none' : parts.join(', ')
  }
  return undefined
}

/** A path with what stood there before and what stands there after. */
type Differing = [path: string, before: unknown, after: unknown]

/** The entries below a path that differ, each with what stood and stands there; a named thing, such as a section, is one of them. */
function differing(path: string, before: unknown, after: unknown): Differing[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return []
  const apart = named(before) && named(after) && before.name !== after.name
  if (!isRecord(before) || !isRecord(after) || apart) {
    // Sizes in a row (widths, heights) are told one by one.
    if (Array.isArray(before) && Array.isArray(after) && /^size\.(widths|heights)$/.test(path))
      return after.flatMap((one, place) => differing(`${path}.${place}`, before[place], one))
    return [[path, before, after]]
  }
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])]
  return keys.flatMap((key) => differing(`${path}.${key}`, before[key], after[key]))
}

/** More differences than these, and only the thing itself is named. */
const mostTold = 3

/** '900 mm, was 885 mm' — a unit that both sides share is said once. */
function pair(is: string, was: string): string {
  const shared = / mm$/.test(is) && / mm$/.test(was)
  return `${is}, was ${shared ? was.replace(/ mm$/, '') : was}`
}

function oneTold([path, before, after]: Differing, unit: LengthUnit): string {
  const { name, own } = entryName(path)
  if (!own && !named(after)) return `${name} changed`
  const [was, is] = [told(path, before, unit), told(path, after, unit)]
  if (was === undefined && is === undefined) return `${name} changed`
  if (before === null || before === undefined) return is === undefined ? `${name}: put in` : `${name}: ${is}`
  if (after === null || after === undefined)
    return was === undefined ? `${name}: taken out` : `${name}: none, was ${was}`
  return is === undefined || was === undefined ? `${name} changed` : `${name}: ${pair(is, was)}`
}

/**
 * A change of a gate's entry in plain words; '' where nothing differs. path without 'spec.': 'size.width' from 885 to 900 is
 * 'Width: 900 mm, was 885'.
 */
export function specChange([path, before, after]: Differing, unit: LengthUnit): string {
  const found = differing(path, before, after)
  if (found.length === 0) return ''
  if (found.length > mostTold) return `${entryName(path).name} changed`
  return [...new Set(found.map((one) => oneTold(one, unit)))].join('; ')
}
