import ts from 'typescript'
import { isBareUnit, isPhrase, isSaying, isSmallWord, silentCalls, silentEntries } from './whatCounts.ts'
import { bareMessage } from '../../shared/language/bareMessage.ts'

const comparing = new Set([
  ts.SyntaxKind.EqualsEqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsEqualsToken,
  ts.SyntaxKind.EqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsToken,
  ts.SyntaxKind.InKeyword,
])

const called = (node: ts.Expression): string =>
  ts.isPropertyAccessExpression(node) ? node.name.text : ts.isIdentifier(node) ? node.text : ''

/** Whether a node is where texts are keys: compared, looked up by, imported, a type. */
function isKeyHere(node: ts.Node, parent: ts.Node): boolean {
  if (ts.isImportDeclaration(parent) || ts.isExportDeclaration(parent) || ts.isTypeNode(parent)) return true
  if (ts.isBinaryExpression(parent)) return comparing.has(parent.operatorToken.kind)
  if (ts.isCaseClause(parent)) return parent.expression === node
  if (ts.isElementAccessExpression(parent)) return parent.argumentExpression === node
  if (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) return parent.name === node
  if (ts.isCallExpression(parent) || ts.isNewExpression(parent))
    return parent.expression !== node && silentCalls.has(called(parent.expression))
  return false
}

/** The name a text is kept or given back under: its entry's, its variable's, its function's. */
function nameOver(node: ts.Node): string {
  if (ts.isPropertyAssignment(node) && (ts.isIdentifier(node.name) || ts.isStringLiteral(node.name)))
    return node.name.text
  if (
    (ts.isVariableDeclaration(node) || ts.isFunctionDeclaration(node)) &&
    node.name &&
    ts.isIdentifier(node.name)
  )
    return node.name.text
  return ''
}

/** Whether an entry of a record is one that never holds words. */
const isSilentEntry = (node: ts.Node): boolean =>
  ts.isPropertyAssignment(node) && silentEntries.has(nameOver(node))

/** The texts of a template or a chain of + as one message with gaps; undefined where it isn't one. */
function pattern(node: ts.Node): { message: string; gaps: ts.Expression[] } | undefined {
  if (ts.isTemplateExpression(node)) {
    const gaps = node.templateSpans.map(({ expression }) => expression)
    const message = node.templateSpans.reduce(
      (text, { literal }, n) => `${text}{${n}}${literal.text}`,
      node.head.text,
    )
    return { message, gaps }
  }
  if (!ts.isBinaryExpression(node) || node.operatorToken.kind !== ts.SyntaxKind.PlusToken) return undefined
  const parts: ts.Expression[] = []
  const part = (one: ts.Expression): void => {
    if (ts.isBinaryExpression(one) && one.operatorToken.kind === ts.SyntaxKind.PlusToken)
      [one.left, one.right].forEach(part)
    else parts.push(one)
  }
  part(node)
  if (!parts.some((one) => ts.isStringLiteralLike(one))) return undefined
  const gaps = parts.filter((one) => !ts.isStringLiteralLike(one))
  return {
    message: parts.map((one) => (ts.isStringLiteralLike(one) ? one.text : `{${gaps.indexOf(one)}}`)).join(''),
    gaps,
  }
}

/** What surrounds a text as the tree is walked: whether it can only be a key, and whether small words are said here. */
type Around = { silent: boolean; saying: boolean }

/**
 * Every message in a script: texts and templates that are something to read, gaps as {0}, {1}. saying: small words are said throughout (an
 * expression of a template). Throws nothing: a script that doesn't parse gives what could be read.
 */
export function scriptTexts(source: string, saying = false): string[] {
  const file = ts.createSourceFile('script.ts', source, ts.ScriptTarget.ESNext, true, ts.ScriptKind.TS)
  const found: string[] = []
  const take = (message: string, around: Around): void => {
    if (around.silent) return
    const text = bareMessage(message).text
    if (!isBareUnit(text) && (isPhrase(text) || (around.saying && isSmallWord(text)))) found.push(text)
  }
  const walk = (node: ts.Node, around: Around): void => {
    const parent = node.parent as ts.Node | undefined
    const silent = (parent !== undefined && isKeyHere(node, parent)) || isSilentEntry(node)
    const name = nameOver(node)
    const now: Around = {
      silent: silent || (around.silent && !ts.isFunctionLike(node)),
      saying: around.saying || (name !== '' && isSaying(name)),
    }
    if (ts.isStringLiteralLike(node)) return take(node.text, now)
    const made = pattern(node)
    if (!made) return ts.forEachChild(node, (child) => walk(child, now))
    take(made.message, now)
    for (const gap of made.gaps) walk(gap, { ...now, saying: true })
  }
  walk(file, { silent: false, saying })
  return found
}
