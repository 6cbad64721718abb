import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** How long a person waits for the screen before a test gives up. */
export const patience = { timeout: 15_000 }

/** Brings a position's page up as a person does: from the one search, by keyboard. */
export async function findPosition(page: Page, tag: string): Promise<void> {
  await page.goto('/harrow-point/positions')
  await heading(page, 'Positions')
  await page.keyboard.press('/')
  await page.keyboard.type(tag)
  await page.keyboard.press('Enter')
  await heading(page, tag)
}

/** Waits for the page with this title. */
export async function heading(page: Page, name: string): Promise<void> {
  await page.getByRole('heading', { level: 1, name, exact: true }).waitFor()
}

/** A place of the frame: the side column on a desk, the bottom bar on a phone. */
export function mainPlace(page: Page, name: string): Locator {
  return page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name })
}

/** The number of open flags that every page shows, once it is what is expected. */
export async function expectFlagCount(page: Page, count: number): Promise<void> {
  await mainPlace(page, `Flags ${count} open`).waitFor()
}

/** The number of open flags as the frame shows it now. */
export async function flagCount(page: Page): Promise<number> {
  const words = await mainPlace(page, 'open').innerText()
  return Number(/\d+/.exec(words)?.[0])
}

/** The open flags of a position, found by their place and the search of the list. */
export async function flagsAt(page: Page, tag: string): Promise<Locator> {
  await mainPlace(page, 'Flags').click()
  await heading(page, 'Flags')
  await page.getByRole('searchbox', { name: 'Search' }).fill(tag)
  await page.getByRole('button', { name: `Remove filter Search: ${tag}` }).waitFor()
  await page.getByText(/^\d+ flags? match(es)?$/).waitFor()
  return page.getByRole('list', { name: 'Flags, most pressing first' }).getByRole('listitem')
}

/** Goes on with Tab until the thing has the focus, as somebody without a mouse does. */
export async function tabTo(page: Page, thing: Locator): Promise<void> {
  await thing.waitFor()
  for (let pressed = 0; pressed < 200; pressed += 1) {
    if (await hasFocus(thing)) return
    await page.keyboard.press('Tab')
  }
  expect.fail(`200 presses of Tab do not reach ${String(thing)}`)
}

export function hasFocus(thing: Locator): Promise<boolean> {
  return thing.evaluate((element) => element === document.activeElement)
}
