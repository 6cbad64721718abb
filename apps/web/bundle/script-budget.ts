import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import { firstLoads, loadProblem } from './script-sizes.ts'

/** Script that a page may load before it can be used, after gzip. The calculations bring the tables of every standard. */
export function scriptLimitBytes(page: string): number {
  return page.startsWith('pages/bench/') ? 320_000 : 250_000
}

/** The figures of the last build, in its folder. */
export const scriptSizesFile = '.script-sizes.json'

/** Writes down what each page loads first, and fails the build where it is too much. */
export function scriptBudget(): Plugin {
  return {
    name: 'script-budget',
    apply: 'build',
    writeBundle({ dir = '' }, bundle) {
      const loads = firstLoads(Object.values(bundle).filter((file) => file.type === 'chunk'))
      writeFileSync(join(dir, scriptSizesFile), JSON.stringify(loads))
      const problems = loads.flatMap((load) => loadProblem(load, scriptLimitBytes(load.page)) ?? [])
      if (problems.length > 0) this.warn(problems.join('\n'))
    },
  }
}
