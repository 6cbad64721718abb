import type { BrowserContext } from 'playwright-core'
import type { Wire } from '../../../../tests/support/wire.ts'
import { loadSheet } from './first-load.ts'
import { keepAllAreas } from './screens.ts'

/** Installs the app, takes the site along, cuts the network and opens the sheet again. Undefined where it can't be installed. */
export async function startInstalled(
  context: BrowserContext,
  wire: Wire,
  site: string,
  address: string,
): Promise<number | undefined> {
  const page = await context.newPage()
  await page.goto(address)
  const isInstalled = await page.evaluate(async () => {
    if (!('serviceWorker' in navigator) || (await navigator.serviceWorker.getRegistration()) === undefined) return false
    await navigator.serviceWorker.ready
    return true
  })
  if (!isInstalled) return undefined
  await keepAllAreas(page, site)
  await page.waitForLoadState('networkidle')
  await page.close()
  await wire.cut()
  try {
    return (await loadSheet(context, address)).usableMs
  } finally {
    await wire.mend()
  }
}
