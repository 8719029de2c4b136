import ts from 'typescript'

/** A source file: its path from the project's folder with forward slashes, and its text. */
export type SourceFile = { path: string; text: string }

/** The script of a source file; of a .vue file, what stands in its script blocks. */
export const scriptOf = ({ path, text }: SourceFile): string =>
  path.endsWith('.vue')
    ? [...text.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g)].map(([, script = '']) => script).join('\n')
    : text

/** Every specifier a file imports, re-exports, or imports late; types count. */
export const importsOf = (file: SourceFile): string[] =>
  ts.preProcessFile(scriptOf(file), true, true).importedFiles.map(({ fileName }) => fileName)

/** Where a relative import leads, from the project's folder; undefined for a package. */
export const targetOf = (path: string, specifier: string): string | undefined => {
  if (!specifier.startsWith('.')) return undefined
  const [plain = ''] = specifier.split('?')
  const parts = path.split('/').slice(0, -1)
  for (const step of plain.split('/')) {
    if (step === '..') parts.pop()
    else if (step !== '.') parts.push(step)
  }
  return parts.join('/')
}

/** The package a specifier names: 'node:fs' for Node's own, '@scope/name' or 'name' otherwise. */
export const packageOf = (specifier: string): string => {
  if (specifier.startsWith('node:')) return specifier
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')
}
