import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { findPosition, heading, mainPlace } from '../support/at-the-screen.ts'
import { narrowPhone, useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
let page: Page
beforeAll(async () => {
  page = await book.signedIn('engineer')
})

const inDays = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)

describe('a planned mount', () => {
  let tag = ''
  beforeAll(async () => {
    const [free] = await book.sql<{ tag: string }>(`
      select p.tag from position p where p.retired_at is null and not exists (
        select from mount_plan l where l.site_id = p.site_id and l.position_id = p.id) order by p.tag limit 1`)
    tag = free!.tag
  })

  it('is planned from its position, with every fault at its field first', async () => {
    await findPosition(page, tag)
    await page.getByRole('link', { name: 'Plan a mount' }).click()
    await heading(page, `Plan a mount at ${tag}`)
    await page.getByRole('button', { name: 'Plan the mount' }).click()
    await page.getByText('Choose a day', { exact: true }).waitFor()
    await page.getByLabel('Day').fill(inDays(60))
    await page.getByRole('textbox', { name: 'Reason' }).fill('Runs hot since the dryer was rebuilt')
    await page.getByRole('textbox', { name: 'Instructions' }).fill('Take the long puller along')
    await page.getByRole('button', { name: 'Plan the mount' }).click()
    await heading(page, 'Planned mounts')
    await page.getByText('Runs hot since the dryer was rebuilt').waitFor()
    const kept = await book.sql(
      "select note from mount_plan where reason = 'Runs hot since the dryer was rebuilt' and planned_for = $1",
      [inDays(60)],
    )
    expect(kept).toEqual([{ note: 'Take the long puller along' }])
  })

  it('leads a technician from the flags to the sheet, which knows it', async () => {
    const phone = await book.signedIn('technician', { viewport: narrowPhone, hasTouch: true })
    await phone.goto('/harrow-point/flags')
    await phone.getByRole('link', { name: /mounts are planned, the next/ }).click()
    await heading(phone, 'Planned mounts')
    await phone.getByRole('link', { name: tag, exact: true }).click()
    await phone.getByText('Take the long puller along').waitFor()
    expect(await phone.getByRole('button', { name: 'Drop the plan' }).count()).toBe(0)
    await phone.getByRole('link', { name: `Start the mount at ${tag}` }).click()
    await phone.waitForURL(/\/remount\?.*plan=/)
  })

  it('is dropped with a reason and leaves the list', async () => {
    await page.getByRole('link', { name: tag, exact: true }).click()
    await heading(page, `Mount planned at ${tag}`)
    await page.getByRole('button', { name: 'Drop the plan' }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('button', { name: 'Drop it' }).click()
    await dialog.getByText('Give the reason in a few words').waitFor()
    await dialog.getByRole('textbox', { name: 'Reason' }).fill('Cause was the belt')
    await dialog.getByRole('button', { name: 'Drop it' }).click()
    await page.getByText('Dropped: Cause was the belt').waitFor()
    await mainPlace(page, 'Mounts').click()
    await page.getByRole('link', { name: /^Planned/ }).click()
    await heading(page, 'Planned mounts')
    expect(await page.getByRole('link', { name: tag, exact: true }).count()).toBe(0)
  })
})

describe("the engineer's decision", () => {
  it('is made at the record where the flag leads, takes the flag off the list, and leaves the verdict', async () => {
    const [mount] = await book.sql<{ record: string; tag: string; verdict: string }>(`
      select r.id as record, p.tag, r.verdict from flag
      join position p on p.site_id = flag.site_id and p.id = flag.position_id
      join fitment f on f.site_id = flag.site_id and f.id = flag.fitment_id
      join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
      where flag.kind = 'mount-over' and flag.cleared_at is null and flag.put_off_until is null
        and not exists (select from mount_decision d where d.site_id = r.site_id and d.mount_record_id = r.id)
      order by p.tag limit 1`)
    const { tag, record } = mount!
    await page.goto(`/harrow-point/flags?q=${tag}`)
    await page.getByRole('link', { name: `Decide: Mount over its band, ${tag}` }).click()
    await heading(page, `Mount at ${tag}`)
    await page.getByRole('button', { name: 'Decide on this mount' }).click()
    await page.getByRole('radio', { name: /^Accept until a day/ }).check()
    await page.getByRole('textbox', { name: 'Accept until' }).fill(inDays(30))
    await page.getByRole('textbox', { name: 'Reason' }).fill('Runs cool, looked at each week')
    await page.getByRole('button', { name: 'Write the decision down' }).click()
    await page
      .getByRole('list', { name: 'Decisions, newest first' })
      .getByText('Runs cool, looked at each week')
      .waitFor()
    const rows = await book.sql(
      `select r.verdict, d.kind, f.put_off_until is not null as waits from mount_record r
       join mount_decision d on d.site_id = r.site_id and d.mount_record_id = r.id
       join flag f on f.site_id = r.site_id and f.fitment_id = r.fitment_id and f.kind = 'mount-over' and f.cleared_at is null
       where r.id = $1`,
      [record],
    )
    expect(rows).toEqual([{ verdict: 'over', kind: 'accept-until', waits: true }])
  })
})
