import type { Drawing, Mark } from '../drawing/drawing.ts'

type Said = (text: string) => string

function markIn(mark: Mark, said: Said): Mark {
  switch (mark.kind) {
    case 'text':
    case 'badge':
      return { ...mark, text: said(mark.text) }
    case 'dimension':
      return { ...mark, texts: mark.texts.map(said), aside: { ...mark.aside, text: said(mark.aside.text) } }
    case 'angle':
      return { ...mark, text: said(mark.text), aside: { ...mark.aside, text: said(mark.aside.text) } }
    case 'chain': {
      const labels = mark.labels.map(
        (label) =>
          label && {
            ...label,
            text: said(label.text),
            ...(label.secondary === undefined ? {} : { secondary: said(label.secondary) }),
          },
      )
      return { ...mark, labels }
    }
    case 'arc':
    case 'arrow':
    case 'line':
    case 'pair':
    case 'polygon':
    case 'polyline':
    case 'symbol':
      return mark
  }
}

/** A drawing with its words in another language, before it is laid out: what is written finds its room by the words that are written. */
export const drawingIn = (drawing: Drawing, said: Said): Drawing => ({
  ...drawing,
  title: said(drawing.title),
  description: said(drawing.description),
  notes: drawing.notes.map(said),
  marks: drawing.marks.map((mark) => markIn(mark, said)),
})
