import { gzipSync } from 'node:zlib'

/** A script file of the build with what it needs before it can run. */
export interface Script {
  readonly fileName: string
  readonly code: string
  /** Other script files, by name. */
  readonly imports: readonly string[]
  readonly isEntry: boolean
  /** The source file that it is the script of, where it is one that is loaded on demand. */
  readonly facadeModuleId: string | null
}

/** All script that is loaded before a page can be used, compressed by gzip. */
export interface FirstLoad {
  /** Source file of the page, or `start` for what every page begins with. */
  readonly page: string
  readonly bytes: number
  /** Largest first. */
  readonly scripts: readonly { readonly fileName: string; readonly bytes: number }[]
}

/** What each page loads first, the largest load first: the start with all that it imports, and the page with all of its own. */
export function firstLoads(scripts: readonly Script[]): FirstLoad[] {
  const bytes = new Map(scripts.map(({ fileName, code }) => [fileName, gzipSync(code, { level: 9 }).length]))
  const start = scripts.filter(({ isEntry }) => isEntry)
  const load = (page: string, roots: readonly Script[]): FirstLoad => {
    const sized = [...importedFiles(roots, scripts)].map((fileName) => ({ fileName, bytes: bytes.get(fileName) ?? 0 }))
    const largestFirst = sized.toSorted((a, b) => b.bytes - a.bytes)
    return { page, bytes: sized.reduce((sum, script) => sum + script.bytes, 0), scripts: largestFirst }
  }
  const pages = scripts.flatMap((script) => {
    const page = script.facadeModuleId?.replaceAll('\\', '/').match(/\/src\/(pages\/.+|session\/.+-page)\.tsx$/)?.[1]
    return page === undefined || script.isEntry ? [] : [load(page, [...start, script])]
  })
  return [load('start', start), ...pages].toSorted((a, b) => b.bytes - a.bytes)
}

/** The names of some scripts and of all that they import. */
export function importedFiles(
  roots: readonly Pick<Script, 'fileName' | 'imports'>[],
  scripts: readonly Pick<Script, 'fileName' | 'imports'>[],
): Set<string> {
  const byName = new Map(scripts.map((script) => [script.fileName, script]))
  const found = new Set<string>()
  const add = (script: Pick<Script, 'fileName' | 'imports'> | undefined): void => {
    if (!script || found.has(script.fileName)) return
    found.add(script.fileName)
    for (const name of script.imports) add(byName.get(name))
  }
  for (const root of roots) add(root)
  return found
}

/** Why a load is too large, with its largest files, or undefined where it is within the limit. */
export function loadProblem({ page, bytes, scripts }: FirstLoad, limitBytes: number): string | undefined {
  if (bytes <= limitBytes) return undefined
  const largest = scripts.slice(0, 5).map((script) => `${script.fileName} ${kilobytes(script.bytes)}`)
  return (
    `The first load of ${page} is ${kilobytes(bytes)} of script and may be ${kilobytes(limitBytes)} (gzip): ` +
    `load later what the page does not need at once. Its largest files: ${largest.join(', ')}.`
  )
}

export function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`
}
