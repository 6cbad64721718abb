import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { OpenBook } from './open-book.ts'
import { heading } from './at-the-screen.ts'

/** A position whose next mount is judged by the generic guide, with the limits that the book holds for it, µm. */
export interface JudgedPlace {
  id: string
  tag: string
  bandMinUm: number
  bandMaxUm: number
  residualMinUm: number
}

/**
 * Positions on an adapter sleeve with an inside mount, an hour meter and no open flag. Bench clearance of residual
 * minimum + band maximum + 35 µm leaves more than enough even where the mount ends 10 µm over its band.
 */
export async function judgedPlaces(book: OpenBook): Promise<JudgedPlace[]> {
  return await book.sql<JudgedPlace>(`
    select p.id, p.tag, m.band_min_nm / 1000 as "bandMinUm", m.band_max_nm / 1000 as "bandMaxUm",
      m.residual_min_nm / 1000 as "residualMinUm"
    from position p
    join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
    join mount_record m on m.site_id = p.site_id and m.id = f.mount_record_id
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    where p.seat = 'adapter-sleeve' and p.retired_at is null and p.maker_chart_id is null
      and p.own_reduction_min_nm is null and m.verdict = 'inside'
      and m.judgement->'band'->'source'->>'kind' = 'generic-guide'
      and exists (select from meter where meter.site_id = p.site_id and meter.machine_id = s.machine_id)
      and not exists (select from flag
        where flag.site_id = p.site_id and flag.position_id = p.id and flag.cleared_at is null)
    order by p.tag`)
}

export function benchUmAt({ residualMinUm, bandMaxUm }: JudgedPlace): number {
  return residualMinUm + bandMaxUm + 35
}

/** A clearance as it is typed in millimetres, with a decimal comma. */
export function mmWithComma(um: number): string {
  return (um / 1000).toFixed(3).replace('.', ',')
}

export interface Work {
  reason: string
  serial: string
  benchUm: number
  mountedUm: number
  /** Done when the bearing is about to be driven up. */
  halfway?: () => Promise<void>
}

/** The way to a step from any other: by the list of all steps. */
export async function goToStep(page: Page, title: string): Promise<void> {
  const list = page.getByRole('list', { name: 'Steps of the sheet' })
  const ruler = page.getByRole('button', { name: /^Step \d+ of/ })
  if (await ruler.isVisible()) await ruler.click()
  await list.getByRole('button', { name: title }).click()
  await onStep(page, title)
}

/** Waits for the screen of a step. */
export async function onStep(page: Page, title: string): Promise<void> {
  await page.getByRole('heading', { level: 2, name: title, exact: true }).waitFor()
}

/** On to the next step, by the button at the thumb. */
export async function nextStep(page: Page): Promise<void> {
  const heading = page.getByRole('heading', { level: 2 }).first()
  const before = await heading.innerText()
  await page.getByRole('button', { name: /^Next/ }).click()
  await expect.poll(() => heading.innerText()).not.toBe(before)
}

/** Fills a mount sheet step by step in the order of the work; both rows read twice, millimetres with a comma. Ends at Sign. */
export async function fillSheet(page: Page, { reason, serial, benchUm, mountedUm, halfway }: Work): Promise<void> {
  await page.getByLabel('I have read this').check()
  await page.getByLabel('Why is a bearing fitted?').fill(reason)
  await page.getByLabel('Or why it was not read').fill('The display is dark')
  await nextStep(page)
  await onStep(page, 'Strip and look')
  await page.getByRole('group', { name: 'How did it end?' }).getByLabel('Removed, not failed').check()
  await page.getByLabel('What was found').fill('Grease grey, rings clean')
  await nextStep(page)
  await onStep(page, 'Shaft and housing')
  await nextStep(page)
  await onStep(page, 'Kit check')
  for (const line of await page.getByRole('radio', { name: 'It is here' }).all()) await line.check()
  await nextStep(page)
  await onStep(page, 'Bearing and bench clearance')
  await page.getByLabel('Serial number').fill(serial)
  await fillReadings(page, 'Bench', benchUm)
  await nextStep(page)
  await onStep(page, 'Drive up')
  await halfway?.()
  await page.getByLabel('Hand tight, then first resistance').check()
  await fillReadings(page, 'Mounted', mountedUm)
  await nextStep(page)
  await closeUp(page)
}

/** Both rows read twice, in millimetres with a comma. */
export async function fillReadings(page: Page, moment: 'Bench' | 'Mounted', um: number): Promise<void> {
  for (const reading of [1, 2])
    for (const row of ['A', 'B'])
      await page.getByLabel(`${moment}, row ${row}, reading ${reading}`).fill(mmWithComma(um))
}

/** From locking the nut to what is left blank. */
async function closeUp(page: Page): Promise<void> {
  await onStep(page, 'Lock the nut')
  await page.getByLabel('Tab of the washer').check()
  await nextStep(page)
  await page.getByRole('group', { name: 'Seals sit, and do not drag' }).getByLabel('Yes').check()
  await nextStep(page)
  await onStep(page, 'Fill with grease')
  await page.getByLabel('In the bearing').fill('60')
  await nextStep(page)
  await onStep(page, 'Cap and bolts')
  await page.getByRole('group', { name: 'Cap on its own base' }).getByLabel('Yes').check()
  await nextStep(page)
  await onStep(page, 'Turn by hand')
  await page.getByLabel('Free, no drag').check()
  await nextStep(page)
  await onStep(page, 'Start-up check')
  await page.getByLabel('Or why it comes later').fill('The line starts on Monday')
  await nextStep(page)
  await onStep(page, 'Sign')
  await page.getByLabel(/^The same for all/).selectOption({ label: 'Not measured' })
}

/** Sets back when the bearing was mounted, from what the sheet took as now; returns what was typed. */
export async function mountedEarlier(page: Page, minutes: number): Promise<string> {
  const field = page.getByLabel('Mounted at, by the clock of the plant')
  const clock = new Date(`${await field.inputValue()}Z`).getTime() - minutes * 60_000
  const typed = new Date(clock).toISOString().slice(0, 16)
  await field.fill(typed)
  return typed
}

/** Signs at the last step and the question after it, and waits for the record. */
export async function signSheet(page: Page, tag: string): Promise<void> {
  await askToSign(page, tag)
  await heading(page, `Mount at ${tag}`)
}

/** Signs at the last step, and says yes to the question. */
export async function askToSign(page: Page, tag: string): Promise<void> {
  await page.getByRole('button', { name: 'Sign', exact: true }).click()
  const question = page.getByRole('dialog', { name: `Sign the mount at ${tag}?` })
  await question.getByRole('button', { name: 'Sign', exact: true }).click()
}
