import { importsOf, targetOf, type SourceFile } from './imports.ts'

/** Circles of imports, each once: 'a.ts → b.ts → a.ts'. */
export const cycleFaults = (files: readonly SourceFile[]): string[] => {
  const known = new Set(files.map(({ path }) => path))
  const uses = new Map(
    files.map((file) => [
      file.path,
      importsOf(file)
        .map((specifier) => targetOf(file.path, specifier))
        .filter((target) => target !== undefined && known.has(target)),
    ]),
  )
  const finished = new Set<string>()
  const faults: string[] = []
  const follow = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path)
    if (at >= 0) return void faults.push(`a circle of imports: ${[...trail.slice(at), path].join(' → ')}`)
    if (finished.has(path)) return
    for (const next of uses.get(path) ?? []) follow(next ?? '', [...trail, path])
    finished.add(path)
  }
  for (const { path } of files) follow(path, [])
  return faults
}
