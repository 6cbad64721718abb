import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { firstLoads, loadProblem, type Script } from './script-sizes.ts'

/** Hexadecimal noise: gzip leaves a little more than one byte of two characters. */
function script(fileName: string, noiseBytes: number, rest: Partial<Script> = {}): Script {
  const code = randomBytes(noiseBytes).toString('hex')
  return { fileName, code, imports: [], isEntry: false, facadeModuleId: null, ...rest }
}

const scripts = [
  script('index.js', 1000, { isEntry: true, imports: ['libraries.js'], facadeModuleId: '/web/src/main.tsx' }),
  script('libraries.js', 5000),
  script('sheet.js', 2000, {
    imports: ['libraries.js', 'tables.js'],
    facadeModuleId: '/web/src/pages/mounts/sheet-page.tsx',
  }),
  script('tables.js', 3000, { imports: ['sheet.js'] }),
  script('chart.js', 90_000, { facadeModuleId: '/web/src/ui/chart.tsx' }),
]

describe('firstLoads()', () => {
  it('counts the start and a page with all that they import, each file once, and nothing that is loaded later', () => {
    const loads = firstLoads(scripts)
    expect(loads.map(({ page }) => page)).toEqual(['pages/mounts/sheet-page', 'start'])
    expect(loads[0]?.scripts.map(({ fileName }) => fileName)).toEqual([
      'libraries.js',
      'tables.js',
      'sheet.js',
      'index.js',
    ])
    expect(loads[0]?.bytes).toBeGreaterThan(11_000)
    expect(loads[0]?.bytes).toBeLessThan(14_000)
    expect(loads[1]?.bytes).toBeLessThan(8000)
  })
})

describe('loadProblem()', () => {
  it('names the page and its largest files where it is over the limit, and nothing at the limit', () => {
    const load = {
      page: 'start',
      bytes: 250_001,
      scripts: [
        { fileName: 'a.js', bytes: 200_000 },
        { fileName: 'b.js', bytes: 50_001 },
      ],
    }
    expect(loadProblem(load, 250_000)).toBe(
      'The first load of start is 250.0 kB of script and may be 250.0 kB (gzip): load later what the page does not need at once. Its largest files: a.js 200.0 kB, b.js 50.0 kB.',
    )
    expect(loadProblem({ ...load, bytes: 250_000 }, 250_000)).toBeUndefined()
  })
})
