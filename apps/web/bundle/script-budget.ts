import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import { firstLoads, loadProblem } from './script-sizes.ts'

/** Where people come in: what these load is the initial script. */
const firstPages = ['start', 'session/sign-in-page', 'pages/flags/flags-page']

/** Script that a page may load before it can be used, after gzip: the initial one, and what a page adds to it. */
export function scriptLimitBytes(page: string): number {
  return firstPages.includes(page) ? 250_000 : 330_000
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
      if (problems.length > 0) this.error(problems.join('\n'))
    },
  }
}
