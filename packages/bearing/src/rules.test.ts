import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const folder = new URL('.', import.meta.url)
const read = (name: string): string => readFileSync(new URL(name, folder), 'utf8')
const rows = [...read('../../../DEVELOPERS.md').matchAll(/^\| (R-[A-Z0-9-]+) \| (.*?) \| (.*?) \|$/gm)]
const names = (cell: string | undefined): string[] =>
  [...(cell ?? '').matchAll(/`([a-z-]+)`/g)].map((match) => match[1] ?? '')

/** Every rule of clearance, drive-up, shaft, bolts, grease, stores and run hours that the department works by. */
const ruled = [
  ['R-CL1', 'R-CL2', 'R-ROW', 'R-MEAN', 'R-OVAL', 'R-RED', 'R-HALF', 'R-RES', 'R-UNIT', 'R-TAB', 'R-RATIO', 'R-U'],
  ['R-SHAFT', 'R-BOLT'],
  ['R-FILL', 'R-DOSE', 'R-INT', 'R-LOAD', 'R-SPEED', 'R-CAL', 'R-COMPL', 'R-OVER', 'R-CHG'],
  ['R-KIT-PAIR', 'R-RING', 'R-LOC', 'R-INCH', 'R-STOCK'],
  ['R-HOURS'],
].flat()

describe('the table of rules in DEVELOPERS.md', () => {
  it('has every rule of the department, each once', () => {
    expect(rows.map((row) => row[1] ?? '').toSorted()).toEqual(ruled.toSorted())
  })

  it('has every rule that a source file names', () => {
    const sources = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    const named = new Set(sources.flatMap((name) => read(name).match(/R-[A-Z]+\d?(-PAIR)?\b/g) ?? []))
    expect(new Set(rows.map((row) => row[1]))).toEqual(named)
  })

  it.each(rows.map((row) => [row[1] ?? '', names(row[2]), names(row[3])] as const))(
    '%s is named in files %j and in a test title of %j',
    (rule, files, tests) => {
      expect(files.length * tests.length).toBeGreaterThan(0)
      for (const name of tests) expect(read(`${name}.test.ts`)).toContain(rule)
      expect(files.some((name) => read(`${name}.ts`).includes(rule))).toBe(true)
    },
  )
})
