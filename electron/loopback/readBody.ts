import type { IncomingMessage } from 'node:http'
import { mostOfJobFile } from '../../shared/openBook/jobFile.ts'
import type { Refusal } from './refusals.ts'

/** The most a request may weigh, bytes: a job with every field full is under a tenth of it. */
export const mostBytes = 1024 * 1024

/** The most that a merchant's whole list of prices may weigh, bytes: 120,000 of them are 11 to 14 MB. */
export const mostBytesOfPrices = 16 * 1024 * 1024

/** How deep a request's lists and objects may be nested: a gate's own go six deep. */
export const mostDepth = 20

/** What a request's body may be: bytes in all, and how deep. */
export type BodyLimits = { bytes: number; depth: number }

export const usualLimits: BodyLimits = { bytes: mostBytes, depth: mostDepth }

/** A merchant's whole list. */
export const limitsOfPrices: BodyLimits = { bytes: mostBytesOfPrices, depth: mostDepth }

/** An order's plan brings the proof that none is cheaper: splits within splits, whole numbers at the end of each. */
export const limitsOfPlan: BodyLimits = { bytes: mostBytesOfPrices, depth: 400 }

/** One job with its cards: the text of its file, every quotation mark in it written as two signs. */
export const limitsOfJobFile: BodyLimits = { bytes: 2 * mostOfJobFile, depth: mostDepth }

/** One photograph with its small picture, in base64: nothing in it is nested. */
export const limitsOfPhotograph: BodyLimits = { bytes: 2 * 1024 * 1024, depth: 1 }

/** What a body held, or why it isn't taken. */
export type Body = { value: unknown } | { refusal: Refusal }

const tooLarge = (most: number): Body => ({
  refusal: { status: 413, reason: `over ${most / 1024 / 1024} MB` },
})
const notJson: Body = { refusal: { status: 400, reason: 'not readable' } }

const [quote, backslash, openList, closeList, openObject, closeObject] = [...'"\\[]{}'].map((mark) =>
  mark.charCodeAt(0),
)

/** Where a text that began at a quotation mark ends: at its closing one, or with the whole. */
function endOfText(json: string, from: number): number {
  let at = from + 1
  while (at < json.length && json.charCodeAt(at) !== quote) at += json.charCodeAt(at) === backslash ? 2 : 1
  return at
}

/** The deepest nesting in a JSON text, counted sign by sign before it is parsed so that a hostile one costs nothing. */
export const depthOf = (json: string): number => {
  let depth = 0
  let deepest = 0
  for (let at = 0; at < json.length; at += 1) {
    const sign = json.charCodeAt(at)
    if (sign === quote) at = endOfText(json, at)
    else if (sign === openList || sign === openObject) deepest = Math.max(deepest, ++depth)
    else if (sign === closeList || sign === closeObject) depth -= 1
  }
  return deepest
}

const parse = (bytes: Buffer, depth: number): Body => {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    if (depthOf(text) > depth) return { refusal: { status: 400, reason: 'nested too deep' } }
    return { value: JSON.parse(text) }
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return notJson
    throw error
  }
}

/** Reads a request's JSON body within limits. A sender that goes away or is too slow ends the stream, and is refused as unreadable. */
export const readBody = async (
  request: IncomingMessage,
  { bytes: most, depth }: BodyLimits = usualLimits,
): Promise<Body> => {
  if (Number(request.headers['content-length'] ?? 0) > most) return tooLarge(most)
  const chunks: Buffer[] = []
  let size = 0
  try {
    for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      size += chunk.length
      if (size > most) return tooLarge(most)
      chunks.push(chunk)
    }
  } catch {
    return { refusal: { status: 400, reason: 'broken off' } }
  }
  return parse(Buffer.concat(chunks), depth)
}
