import type {
  AttributeNode,
  DirectiveNode,
  ElementNode,
  RootNode,
  TemplateChildNode,
} from '@vue/compiler-dom'
import { scriptTexts } from './scriptTexts.ts'
import { isLeftAlone, messageOf, nodes, runsOf } from './templateRuns.ts'
import { isBareUnit, isPhrase, silentAttributes } from './whatCounts.ts'

const isWorded = (message: string): boolean =>
  /\p{L}{2,}/u.test(message.replace(/\{\d+\}/g, '')) && !isBareUnit(message)

const expressionTexts = (expression: string): string[] => scriptTexts(`void (${expression})`, true)

const isSilentAttribute = (name: string): boolean => silentAttributes.has(name) || name.startsWith('data-')

function attributeTexts(prop: AttributeNode | DirectiveNode): string[] {
  if (prop.type === nodes.attribute) {
    const text = prop.value?.content ?? ''
    if (isSilentAttribute(prop.name)) return []
    // A single word under label or title is said whatever it looks like.
    const said = /label|title|ghost|placeholder|alt|sign|heading|caption/.test(prop.name) && isWorded(text)
    return said || (isPhrase(text) && !isBareUnit(text)) ? [text] : []
  }
  if (prop.name !== 'bind' && prop.name !== 'text') return []
  const name = prop.arg && 'content' in prop.arg ? prop.arg.content : ''
  if (isSilentAttribute(name) || !prop.exp) return []
  return expressionTexts('content' in prop.exp ? prop.exp.content : prop.exp.loc.source)
}

function elementTexts(element: ElementNode): string[] {
  return [
    ...element.props.flatMap(attributeTexts),
    ...(isLeftAlone(element) ? [] : childTexts(element.children)),
  ]
}

function childTexts(children: readonly TemplateChildNode[]): string[] {
  const runs = runsOf(children).flatMap((run) => {
    const { text, gaps } = messageOf(run)
    return [...(isWorded(text) ? [text] : []), ...gaps.flatMap(expressionTexts)]
  })
  const inside = children.flatMap((child) => (child.type === nodes.element ? elementTexts(child) : []))
  return [...runs, ...inside]
}

/** Every message in a template: its words, words with values in them as messages with gaps, attributes that are read, texts in its expressions. */
export const templateTexts = (template: RootNode): string[] => childTexts(template.children)
