import type { Page } from 'playwright-core'
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
}

/** Fills a mount sheet in the order of the work, both rows read twice, millimetres with a comma. */
export async function fillSheet(page: Page, { reason, serial, benchUm, mountedUm }: Work): Promise<void> {
  await page.getByLabel('Why is a bearing fitted?').fill(reason)
  await page.getByLabel('Or why it was not read').fill('The display is dark')
  await page.getByRole('group', { name: 'How did it end?' }).getByLabel('Removed, not failed').check()
  await page.getByLabel('What was found').fill('Grease grey, rings clean')
  await page.getByLabel('Serial number').fill(serial)
  await page.getByLabel('Feeler set').fill('Set 2')
  for (const reading of [1, 2])
    for (const row of ['A', 'B']) {
      await page.getByLabel(`Bench, row ${row}, reading ${reading}`).fill(mmWithComma(benchUm))
      await page.getByLabel(`Mounted, row ${row}, reading ${reading}`).fill(mmWithComma(mountedUm))
    }
  await page.getByLabel('In the bearing').fill('60')
  await page.getByRole('group', { name: 'Turned by hand' }).getByLabel('Free, no drag').check()
}

/** Sets back when the bearing was mounted, from what the sheet took as now; returns what was typed. */
export async function mountedEarlier(page: Page, minutes: number): Promise<string> {
  const field = page.getByLabel('Mounted at, by the clock of the plant')
  const clock = new Date(`${await field.inputValue()}Z`).getTime() - minutes * 60_000
  const typed = new Date(clock).toISOString().slice(0, 16)
  await field.fill(typed)
  return typed
}

/** Signs the sheet and the question after it, and waits for the record. */
export async function signSheet(page: Page, tag: string): Promise<void> {
  await page.getByRole('button', { name: 'Sign', exact: true }).click()
  const question = page.getByRole('dialog', { name: `Sign the mount at ${tag}?` })
  await question.getByRole('button', { name: 'Sign', exact: true }).click()
  await heading(page, `Mount at ${tag}`)
}
