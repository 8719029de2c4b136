import type { Page } from '@playwright/test'

/** What is wrong with the look of a page as it stands, a line a fault; empty when nothing is. */
export type Faults = string[]

/**
 * Figures (sizes, prices, dates, counts) that stand out less than 7 to 1 from the ground behind them. A figure in a
 * drawing is held against the drawing's paper.
 */
export const weakFigures = (page: Page): Promise<Faults> =>
  page.evaluate(() => {
    const paint = document.createElement('canvas').getContext('2d', { willReadFrequently: true })
    const rgba = (colour: string): number[] => {
      if (!paint) return [0, 0, 0, 0]
      paint.clearRect(0, 0, 1, 1)
      paint.fillStyle = colour
      paint.fillRect(0, 0, 1, 1)
      return [...paint.getImageData(0, 0, 1, 1).data]
    }
    const light = (colour: readonly number[]): number => {
      const [r = 0, g = 0, b = 0] = colour.map((part) => {
        const share = part / 255
        return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
      })
      return 0.2126 * r + 0.7152 * g + 0.0722 * b
    }
    /** What is seen behind an element, a thin colour laid over what lies under it. */
    const ground = (element: Element | null): number[] => {
      if (!element) return rgba(getComputedStyle(document.body).backgroundColor)
      const own = rgba(getComputedStyle(element).backgroundColor)
      const cover = (own[3] ?? 0) / 255
      if (cover === 1) return own
      const under = ground(element.parentElement)
      return under.map((part, place) => (own[place] ?? 0) * cover + part * (1 - cover))
    }
    const ownWords = (element: Element): string =>
      element instanceof HTMLInputElement
        ? element.value
        : [...element.childNodes].map((node) => (node.nodeType === 3 ? node.textContent : '')).join('')
    return [...document.querySelectorAll('body *')].flatMap((element) => {
      if (!/\d/.test(ownWords(element)) || element.closest('.unseen, script, style')) return []
      const box = element.getBoundingClientRect()
      if (box.width === 0 || getComputedStyle(element).visibility === 'hidden') return []
      const style = getComputedStyle(element)
      const [a, b] = [
        light(rgba(element instanceof SVGElement ? style.fill : style.color)),
        light(ground(element)),
      ]
      const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
      return ratio < 7
        ? [
            `${ratio.toFixed(2)}: '${ownWords(element).trim().slice(0, 40)}' ${element.getAttribute('class') ?? element.tagName}`,
          ]
        : []
    })
  })

/** What runs off sideways, or would have to be scrolled sideways to be read; papers shown at their own width apart. */
export const runsOff = (page: Page): Promise<Faults> =>
  page.evaluate(() => {
    const named = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} '${(element.textContent ?? '').trim().slice(0, 30)}'`
    const holds = (element: Element): boolean => /auto|scroll/.test(getComputedStyle(element).overflowX)
    const across = [...document.querySelectorAll('html, body, body *')].filter(
      (element) =>
        !element.matches('.board-under, textarea, input, svg *') &&
        (holds(element) || element.matches('html, body, main, .whole')) &&
        element.scrollWidth > element.clientWidth + 1 &&
        element.clientWidth > 0,
    )
    const cut = [...document.querySelectorAll('body *')].filter((element) => {
      if (element.closest('.unseen, svg, .board-under')) return false
      const box = element.getBoundingClientRect()
      return box.width > 0 && box.height > 0 && (box.right > window.innerWidth + 1 || box.left < -1)
    })
    const outer = cut.filter((element) => !cut.includes(element.parentElement ?? document.body))
    return [
      ...across.map(
        (element) => `sideways: ${named(element)} ${element.scrollWidth} in ${element.clientWidth}`,
      ),
      ...outer.map(
        (element) =>
          `off the edge: ${named(element)} to ${Math.round(element.getBoundingClientRect().right)}`,
      ),
    ]
  })

/** A screen that isn't there, pushed off by what was laid beside it. */
export const screenGone = (page: Page): Promise<Faults> =>
  page.evaluate(() => {
    const box = document.querySelector('main')?.getBoundingClientRect()
    const there = box !== undefined && box.width > window.innerWidth / 3 && box.left < window.innerWidth / 3
    return there
      ? []
      : [`no screen: ${box ? `${Math.round(box.width)} wide at ${Math.round(box.left)}` : 'none'}`]
  })

/** What can be pressed and lies half under something else that can be: parts of a screen that ran into one another. What lies over the screen on purpose is left. */
export const runInto = (page: Page): Promise<Faults> =>
  page.evaluate(() => {
    type Box = { left: number; top: number; right: number; bottom: number }
    const meet = (a: Box, b: Box): Box => ({
      left: Math.max(a.left, b.left),
      top: Math.max(a.top, b.top),
      right: Math.min(a.right, b.right),
      bottom: Math.min(a.bottom, b.bottom),
    })
    const lifted = (element: Element, from: Element): Element | null => {
      for (let one: Element | null = element; one && !one.contains(from); one = one.parentElement)
        if (
          /sticky|fixed|absolute/.test(getComputedStyle(one).position) ||
          getComputedStyle(one).zIndex !== 'auto'
        )
          return one
      return null
    }
    const seen = (element: Element): Box => {
      let box: Box = element.getBoundingClientRect()
      for (let over = element.parentElement; over; over = over.parentElement)
        if (getComputedStyle(over).overflowY !== 'visible') box = meet(box, over.getBoundingClientRect())
      return meet(box, { left: 0, top: 0, right: window.innerWidth, bottom: window.innerHeight })
    }
    const pressed = [...document.querySelectorAll('button, a[href], input, select, textarea')].flatMap(
      (element) => {
        // What a shut fold holds keeps its place on the page, and isn't there to be pressed.
        if (!element.checkVisibility({ visibilityProperty: true })) return []
        if (getComputedStyle(element).display === 'inline' || element.closest('.unseen, svg')) return []
        const box = seen(element)
        return box.right - box.left > 4 && box.bottom - box.top > 4 ? [{ element, box }] : []
      },
    )
    const named = (element: Element) =>
      `'${(element.textContent ?? '').trim().slice(0, 24) || (element.getAttribute('aria-label') ?? element.tagName)}'`
    return pressed.flatMap(({ element, box }, place) =>
      pressed.slice(place + 1).flatMap((other) => {
        const { left, top, right, bottom } = meet(box, other.box)
        if (right - left < 5 || bottom - top < 5) return []
        if (element.contains(other.element) || other.element.contains(element)) return []
        if (lifted(element, other.element) || lifted(other.element, element)) return []
        return [`runs into: ${named(element)} and ${named(other.element)}`]
      }),
    )
  })

/** Words that are cut off by the box they stand in without so much as an ellipsis. A row of a list may end a long name so; opened, it stands whole. */
export const cutOff = (page: Page): Promise<Faults> =>
  page.evaluate(() =>
    [...document.querySelectorAll('body *')].flatMap((element) => {
      if (element.closest('.unseen, svg, .board-under, .scrolls-across') || !(element instanceof HTMLElement))
        return []
      if (element.matches('input, textarea, .scrolls')) return []
      const style = getComputedStyle(element)
      if (
        style.textOverflow === 'ellipsis' ||
        style.webkitLineClamp !== 'none' ||
        !/hidden|clip/.test(style.overflowX + style.overflowY)
      )
        return []
      if (element.clientWidth < 2 || element.clientHeight < 2) return []
      const wide = style.overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 2
      const high = /hidden|clip/.test(style.overflowY) && element.scrollHeight > element.clientHeight + 2
      return wide || high
        ? [
            `cut off: ${element.tagName.toLowerCase()}.${element.className} '${(element.textContent ?? '').trim().slice(0, 30)}' ${element.scrollWidth}×${element.scrollHeight} in ${element.clientWidth}×${element.clientHeight}`,
          ]
        : []
    }),
  )

/**
 * What can be pressed or typed in and is smaller than `least` px either way. A tick box counts with its own words, a link or button with what it
 * lays over its row or card; a link in a running line is left as the line runs.
 */
export const smallControls = (page: Page, least: number): Promise<Faults> =>
  page.evaluate((asked) => {
    const controls =
      'button, select, summary, input, textarea, a[href], [role="button"], [role="tab"], [role="option"], [role="switch"]'
    /** A link or button may reach further than its words by what it lays over its row or round a short figure. */
    const reach = (element: Element): { width: number; height: number } => {
      const box = element.getBoundingClientRect()
      const cover = getComputedStyle(element, '::after')
      if (cover.content === 'none' || cover.position !== 'absolute') return box
      return {
        width: Math.max(box.width, parseFloat(cover.width) || 0),
        height: Math.max(box.height, parseFloat(cover.height) || 0),
      }
    }
    return [...document.querySelectorAll(controls)].flatMap((element) => {
      if (!(element instanceof HTMLElement) || element.hidden) return []
      const style = getComputedStyle(element)
      if (style.visibility === 'hidden' || style.display === 'inline') return []
      const ticked = element instanceof HTMLInputElement && /checkbox|radio|file/.test(element.type)
      const pressed = ticked ? (element.closest('label') ?? element.labels?.[0] ?? element) : element
      const box = reach(pressed)
      if (box.width === 0 || box.height === 0 || (element.closest('.unseen') && pressed === element))
        return []
      const short = Math.min(box.height, element.matches('a') ? asked : box.width)
      return short < asked - 0.5
        ? [
            `small: ${element.tagName.toLowerCase()}.${element.className} '${(element.textContent ?? '').trim().slice(0, 24) || (element.getAttribute('aria-label') ?? '')}' ${Math.round(box.width)} × ${Math.round(box.height)}`,
          ]
        : []
    })
  }, least)
