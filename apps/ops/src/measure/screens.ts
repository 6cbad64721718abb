import type { Locator, Page } from 'playwright-core'

// What the measurement looks for on the screens, by the words that a person reads there.

export function sheetAddress(site: string, positionId: string, step?: string): string {
  return `/${site}/positions/${positionId}/remount${step === undefined ? '' : `?step=${step}`}`
}

/** The label of a field of the first step of the sheet. */
export const firstField = 'Permit number'

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
  const list = page.getByRole('list', { name: 'Areas kept on this device' })
  const areas = list.getByRole('listitem')
  await areas.first().waitFor()
  for (const area of await areas.all()) {
    await area.getByRole('checkbox').check()
    await area.getByText('kB').waitFor()
  }
}

/** Signs in at the form. */
export async function signInAt(page: Page, email: string, password: string): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('E-mail').fill(email)
  await page.getByRole('textbox', { name: 'Password' }).fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('navigation', { name: 'Main' }).first().waitFor()
}
