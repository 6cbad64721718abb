import { createRequire } from 'node:module'
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import type { AxeResults, RunOptions } from 'axe-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

declare global {
  interface Window {
    axe?: { run(options: RunOptions): Promise<AxeResults> }
  }
}

/** What axe finds on the page as it stands, each as "rule: element". */
export async function axeFindings(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => window.axe !== undefined))) await page.evaluate(axeSource)
  return await page.evaluate(async () => {
    const { violations } = await window.axe!.run({ resultTypes: ['violations'] })
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`))
  })
}

/** How many pixels the page can be scrolled sideways. */
export function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
}
