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

/** Where a reading gets its verdict: the gauge with its words. */
export function verdictOfReadings(page: Page): Locator {
  return page.getByRole('figure').filter({ hasText: 'Readings as a table' }).first()
}

/** Takes all areas of the site along, so that their sheets open without a network. */
export async function keepAllAreas(page: Page, site: string): Promise<void> {
  await page.goto(`/${site}/device`)
  for (const area of await page.getByRole('checkbox').all()) await area.check()
}
