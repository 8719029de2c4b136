import { describe, expect, it } from 'vitest'
import { nextStep, type StepOrder } from '../../shared/job/nextStep.ts'
import { promiseSpan, promiseSpans, spanDays } from '../../shared/job/dueSpan.ts'
import type { Stage } from '../../shared/job/job.ts'

const today = '2026-03-04'
type Given = Parameters<typeof nextStep>[0]
const step = (stage: Stage, some: Partial<Given> = {}, order?: StepOrder) => {
  const job = { stage, width: 985, height: 1830, accepted: false, carded: false, quotedUntil: null, ...some }
  const { words, order: number } = nextStep(job, today, order)
  return number === undefined ? words : `${words} ${number}`
}

describe('what a job wants next', () => {
  it('goes by its stage', () => {
    expect(step('enquiry')).toBe('Measure the opening')
    expect(step('surveyed')).toBe('Design the gate')
    expect(step('surveyed', { height: null })).toBe('Enter the sizes')
    expect(step('designed')).toBe('Send the quotation')
    expect(step('making')).toBe('Issue the card')
    expect(step('making', { carded: true })).toBe('Make and hang it')
  })

  it('goes by the quotation: sent, run out, accepted', () => {
    expect(step('quoted', { quotedUntil: '2026-03-04' })).toBe('Ask for an answer')
    expect(step('quoted', { quotedUntil: '2026-03-03' })).toBe('Quote again: the price has run out')
    expect(step('quoted', { quotedUntil: '2026-03-03', accepted: true })).toBe('Order the timber')
  })

  it('goes by the timber: not ordered, to come, here', () => {
    expect(step('ordered')).toBe('Order the timber')
    expect(step('ordered', {}, { number: '2026-T07', state: 'placed' })).toBe('Book in order 2026-T07')
    expect(step('ordered', {}, { number: '2026-T07', state: 'received' })).toBe('Issue the card')
    expect(step('ordered', { carded: true }, { number: '2026-T07', state: 'cut' })).toBe('Start making')
  })
})

describe('the spans a job in hand is promised in', () => {
  it('meet without a gap: each day falls in the span whose days hold it', () => {
    for (let day = 1; day <= 31; day += 1) {
      const due = `2026-03-${String(day).padStart(2, '0')}`
      const holding = promiseSpans.filter((span) => {
        const days = spanDays(span, today)
        return days !== 'none' && (days.from ?? due) <= due && due <= (days.upTo ?? due)
      })
      expect(holding).toEqual([promiseSpan(due, today)])
    }
    expect(promiseSpan(null, today)).toBe('no day')
    expect(spanDays('this week', today)).toEqual({ from: '2026-03-04', upTo: '2026-03-08' })
    expect(spanDays('next week', today)).toEqual({ from: '2026-03-09', upTo: '2026-03-15' })
  })
})
