import type { Locator, Page } from 'playwright-core'

// What the measurement looks for on the screens, by the words that a person reads there.

export function sheetAddress(site: string, positionId: string, step?: string): string {
  return `/${site}/positions/${positionId}/remount${step === undefined ? '' : `?step=${step}`}`
}

/** A field of the first step of the sheet. */
export function firstField(page: Page): Locator {
  return page.getByLabel('Permit number')
}

export function benchReading(page: Page, row: string, reading: number): Locator {
  return page.getByLabel(`Bench, row ${row}, reading ${reading}`)
}

export function mountedReading(page: Page, row: string, reading: number): Locator {
  return page.getByLabel(`Mounted, row ${row}, reading ${reading}`)
}

/** Where the readings of the end place stand with their verdict. */
export function verdictOfReadings(page: Page): Locator {
  return page.getByRole('region', { name: 'At the end place' })
}

/** Takes all areas of the site along, so that their sheets open without a network. */
export async function keepAllAreas(page: Page, site: string): Promise<void> {
  await page.goto(`/${site}/device`)
  for (const area of await page.getByRole('checkbox').all()) await area.check()
}
