import ts from 'typescript'
import type { SourceFile } from './imports.ts'

/** What reaches the machine, the network or the screen from anywhere, and so may not be named in shared/. */
const outside = new Set([
  'process',
  'window',
  'document',
  'fetch',
  'globalThis',
  'navigator',
  'localStorage',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'require',
])

/** Whether an identifier stands for a value of its own, rather than a key, a member or a declared name. */
const isFree = (node: ts.Identifier): boolean => {
  const { parent } = node
  if (ts.isPropertyAccessExpression(parent) || ts.isQualifiedName(parent))
    return !(node === ('name' in parent ? parent.name : parent.right))
  if (ts.isTypeReferenceNode(parent)) return false
  return !('name' in parent && parent.name === node && !ts.isShorthandPropertyAssignment(parent))
}

const impurity = (node: ts.Node, text: (node: ts.Node) => string): string | undefined => {
  if (ts.isNewExpression(node) && text(node.expression) === 'Date') return 'new Date'
  if (ts.isPropertyAccessExpression(node)) {
    const access = text(node).replace(/\s/g, '')
    if (access === 'Date.now' || access === 'Math.random') return access
  }
  return ts.isIdentifier(node) && outside.has(node.text) && isFree(node) ? node.text : undefined
}

/** What a file of shared/ takes from the clock, from chance or from the machine, one line a fault. */
export const purityFaults = (file: SourceFile): string[] => {
  if (!file.path.startsWith('shared/')) return []
  const source = ts.createSourceFile(file.path, file.text, ts.ScriptTarget.Latest, true)
  const faults: string[] = []
  const visit = (node: ts.Node): void => {
    const found = impurity(node, (part) => part.getText(source))
    if (found !== undefined) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart(source))
      faults.push(`${file.path}:${line + 1}: shared is pure and may not use ${found}`)
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return faults
}

/** A file that only passes on what others export says nothing itself, and hides who uses whom. */
export const barrelFaults = (file: SourceFile): string[] => {
  if (!file.path.endsWith('.ts') || file.path.endsWith('.d.ts')) return []
  const { statements } = ts.createSourceFile(file.path, file.text, ts.ScriptTarget.Latest, true)
  const passesOn = statements.filter(
    (statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier,
  )
  return passesOn.length > 0 && passesOn.length === statements.length
    ? [`${file.path}: only passes on other files`]
    : []
}
