import {
  createSimpleExpression,
  type AttributeNode,
  type DirectiveNode,
  type ElementNode,
  type ExpressionNode,
  type NodeTransform,
  type RootNode,
  type TemplateChildNode,
} from '@vue/compiler-dom'
import { isLeftAlone, messageOf, nodes, runsOf, type Run } from './templateRuns.ts'
import { readAttributes } from './whatCounts.ts'

const word = /\p{L}{2,}/u
const quoted = (text: string): string => JSON.stringify(text)
const written = (expression: ExpressionNode): string =>
  'content' in expression ? expression.content : expression.loc.source
const expression = (code: string, loc: ExpressionNode['loc']): ExpressionNode =>
  createSimpleExpression(code, false, loc)

/** A run as the values that show it: one message with its gaps, or, where there are no words between, each value by itself. */
function shownRun(run: Run): TemplateChildNode[] {
  const { lead, text, tail, gaps } = messageOf(run)
  const worded = word.test(text.replace(/\{\d+\}/g, ''))
  if (!worded)
    return run.parts.map((part) =>
      part.type === nodes.text
        ? part
        : { ...part, content: expression(`$held($said(${written(part.content)}))`, part.content.loc) },
    )
  const [first] = run.parts
  if (!first) return []
  const values = gaps.length > 0 ? `, [${gaps.map((gap) => `(${gap})`).join(', ')}]` : ''
  const content = expression(`$held($phrase(${quoted(lead + text + tail)}${values}))`, first.loc)
  return [{ type: nodes.interpolation, content, loc: first.loc }]
}

/** Whether an attribute is read from the page: of an element, or handed through a component to the element under it. */
const isRead = (name: string, element: ElementNode): boolean =>
  readAttributes.has(name) &&
  (element.tagType === 0 || name.includes('-') || name === 'placeholder' || name === 'alt')

const bound = (name: string, code: string, loc: AttributeNode['loc']): DirectiveNode => ({
  type: nodes.directive,
  name: 'bind',
  rawName: `:${name}`,
  arg: createSimpleExpression(name, true, loc),
  exp: expression(code, loc),
  modifiers: [],
  loc,
})

function shownAttribute(
  prop: AttributeNode | DirectiveNode,
  element: ElementNode,
): AttributeNode | DirectiveNode {
  if (prop.type === nodes.attribute) {
    const text = prop.value?.content ?? ''
    return isRead(prop.name, element) && word.test(text)
      ? bound(prop.name, `$phrase(${quoted(text)})`, prop.loc)
      : prop
  }
  const name = prop.arg && 'content' in prop.arg ? prop.arg.content : ''
  const looked = prop.name === 'text' || (prop.name === 'bind' && isRead(name, element))
  if (!looked || !prop.exp) return prop
  return { ...prop, exp: expression(`$said(${written(prop.exp)})`, prop.exp.loc) }
}

function wrapChildren(parent: RootNode | ElementNode): void {
  const runs = runsOf(parent.children)
  const children: TemplateChildNode[] = []
  for (let at = 0; at < parent.children.length;) {
    const run = runs.find(({ from }) => from === at)
    const child = parent.children[at]
    if (run) children.push(...shownRun(run))
    else if (child) children.push(child)
    at = run ? run.to : at + 1
  }
  for (const child of children) if (child.type === nodes.element) wrapElement(child)
  parent.children = children
}

function wrapElement(element: ElementNode): void {
  if (isLeftAlone(element)) return
  element.props = element.props.map((prop) => shownAttribute(prop, element))
  wrapChildren(element)
}

/**
 * A step of Vue's compiler: everything a template shows goes through the look-up of the chosen language. Done once, at the root, before any
 * other step reads the tree, and what is laid on the page (not what is only read out) keeps its figures with their units. `translate="no"` on an element leaves it and what is in it alone.
 */
export const wrapTemplate: NodeTransform = (node) => {
  if (node.type === nodes.root) wrapChildren(node)
}
