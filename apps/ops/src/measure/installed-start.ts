import type { BrowserContext } from 'playwright-core'
import type { Wire } from '../../../../tests/support/wire.ts'
import { loadSheet, type Load } from './first-load.ts'
import { keepAllAreas } from './screens.ts'

/** Installs the app, takes the site along, cuts the network and opens the sheet again. */
export async function startInstalled(
  context: BrowserContext,
  wire: Wire,
  site: string,
  address: string,
): Promise<Load> {
  const page = await context.newPage()
  await page.goto(address)
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  await keepAllAreas(page, site)
  await page.close()
  await wire.cut()
  try {
    return await loadSheet(context, address)
  } finally {
    await wire.mend()
  }
}
