import type {
  ElementNode,
  ExpressionNode,
  InterpolationNode,
  TemplateChildNode,
  TextNode,
} from '@vue/compiler-dom'
import { bareMessage } from '../../shared/language/bareMessage.ts'

/** Kinds of node of a template's tree, as the compiler numbers them. */
export const nodes = {
  root: 0,
  element: 1,
  text: 2,
  comment: 3,
  interpolation: 5,
  attribute: 6,
  directive: 7,
  ifNode: 9,
  forNode: 11,
} as const

/** Words and values side by side in an element, with nothing between: what is told in one breath. */
export type Run = { from: number; to: number; parts: (TextNode | InterpolationNode)[] }

const isPart = (child: TemplateChildNode): child is TextNode | InterpolationNode =>
  child.type === nodes.text || child.type === nodes.interpolation

/** The runs among an element's children; from and to are their places in the list. */
export function runsOf(children: readonly TemplateChildNode[]): Run[] {
  const runs: Run[] = []
  children.forEach((child, at) => {
    if (!isPart(child)) return
    const last = runs.at(-1)
    if (last?.to === at) {
      last.parts.push(child)
      last.to = at + 1
    } else runs.push({ from: at, to: at + 1, parts: [child] })
  })
  return runs
}

const written = (expression: ExpressionNode): string =>
  'content' in expression ? expression.content : expression.loc.source

/**
 * A run as a message with gaps, without the marks that join it to its neighbours: 'Fault {0}' with the expressions of its gaps. Nothing but
 * gaps gives a message without words.
 */
export function messageOf(run: Run): { lead: string; text: string; tail: string; gaps: string[] } {
  const gaps: string[] = []
  const whole = run.parts
    .map((part) => (part.type === nodes.text ? part.content : `{${gaps.push(written(part.content)) - 1}}`))
    .join('')
  return { ...bareMessage(whole), gaps }
}

/** Whether an element says that its words aren't the program's own (`translate="no"`), or is taken as it stands. */
export const isLeftAlone = (element: ElementNode): boolean =>
  element.props.some(
    (prop) =>
      (prop.type === nodes.attribute && prop.name === 'translate' && prop.value?.content === 'no') ||
      (prop.type === nodes.directive && prop.name === 'pre'),
  )
