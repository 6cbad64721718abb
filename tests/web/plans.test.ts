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

describe('the plans of a position', () => {
  // 52 rev/min, bore 120 mm: R-INT 14e6 / (52 · √120) − 480 = 24 097 h; light abrasive 0.4, RH 80 to 90 % 0.7, P to 0.15 C 0.7
  const tag = 'RP01-HD-A'
  let position = ''
  let shaft = ''
  const plans = () =>
    book.sql<{ task: string; hours: number | null; endedReason: string | null }>(
      `select task, interval_hours as hours, ended_reason as "endedReason" from grease_plan where position_id = $1
       order by created_at desc`,
      [position],
    )
  beforeAll(async () => {
    const [place] = await book.sql<{ id: string; shaft: string }>(
      'select id, shaft_id as shaft from position where tag = $1',
      [tag],
    )
    position = place!.id
    shaft = place!.shaft
  })

  it('show what another level would make of the interval, beside the present one, and store nothing of it', async () => {
    const before = await plans()
    await findPosition(page, tag)
    await page.getByRole('link', { name: 'Plans' }).click()
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('button', { name: 'What if' }).click()
    // × 0.2: 24 097 · 0.196 · 0.2 = 944.6
    await sheet.getByLabel('Temperature of the outer ring').selectOption({ label: 'outer ring 80 to 93 °C (× 0.2)' })
    await sheet.getByText('944 run hours').waitFor()
    await sheet.getByText('4 720 run hours').waitFor()
    await sheet.getByText('What if: 20 % of it').waitFor()
    await sheet.getByRole('button', { name: 'Back to the plan' }).click()
    expect(await plans()).toEqual(before)
  })

  it('hold several tasks; the oil is looked at from the due list by its own task, without a dose', async () => {
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('button', { name: 'Enter another plan' }).click()
    await sheet.getByRole('button', { name: /^Oil level/ }).click()
    await sheet.getByLabel('Oil and amount').fill('Mineral oil VG 220')
    await sheet.getByLabel('Every').fill('0')
    await sheet.getByRole('button', { name: 'Start this plan' }).click()
    await sheet.getByText('Enter 1 to 1000 whole days.').waitFor()
    await sheet.getByLabel('Every').fill('7')
    await sheet.getByRole('button', { name: 'Start this plan' }).click()
    await sheet.getByRole('region', { name: 'Check the oil level' }).getByText('Every 7 days').waitFor()
    await sheet.getByRole('region', { name: 'Regrease by gun' }).waitFor()

    const phone = await book.signedIn('technician', { viewport: narrowPhone, hasTouch: true })
    await phone.goto('/harrow-point/greasing?task=check-oil')
    await phone.getByRole('button', { name: `Log oil check of ${tag}` }).click()
    const log = phone.getByRole('dialog', { name: `Log oil check of ${tag}` })
    await log.getByRole('button', { name: 'Log oil check' }).click()
    await log.getByText('Say how it stands.').waitFor()
    await log.getByLabel('Low, topped up').check()
    await log.getByLabel('Note').fill('0.2 l')
    await log.getByRole('button', { name: 'Log oil check' }).click()
    await phone.getByText(`Oil check at ${tag} is logged`).waitFor()
    const done = await book.sql(
      'select task, dose_g as dose, note from greasing where position_id = $1 and task = $2',
      [position, 'check-oil'],
    )
    expect(done).toEqual([{ task: 'check-oil', dose: null, note: 'Low, topped up. 0.2 l' }])
  })

  it('are flagged when the speed of the shaft is changed; the proposal is taken, and the flag is gone', async () => {
    await page.goto(`/harrow-point/setup/change/shafts/${shaft}`)
    await page.getByLabel('Speed').fill('104')
    await page.getByRole('button', { name: 'Change the shaft' }).click()
    await page.goto(`/harrow-point/flags?q=${tag}`)
    await page.getByRole('link', { name: `See the plan: Grease plan to be looked at again, ${tag}` }).click()
    const changed = page.getByRole('dialog').getByRole('region', { name: 'The duty has changed' })
    await changed.getByText('Speed: 52 rev/min, today 104 rev/min').waitFor()
    await changed.getByText('4 720 run hours').waitFor()
    // 14e6 / (104 · √120) − 480 = 11 809 h, · 0.196 = 2 314.5
    await changed.getByRole('button', { name: 'Take 2 314 run hours' }).click()
    await changed.waitFor({ state: 'detached' })
    expect((await plans())[0]).toMatchObject({ task: 'regrease', hours: 2314 })
    expect(
      await book.sql("select id from flag where position_id = $1 and kind = 'plan-review' and cleared_at is null", [
        position,
      ]),
    ).toEqual([])
  })

  it('end with a reason, which stays to be read', async () => {
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('button', { name: 'End: Check the oil level' }).click()
    await sheet.getByLabel('Reason').fill('Rebuilt for grease')
    await sheet.getByRole('button', { name: 'End this plan' }).click()
    await sheet.getByRole('region', { name: 'Plans before' }).getByText('Rebuilt for grease').waitFor()
    expect((await plans()).find(({ task }) => task === 'check-oil')).toMatchObject({
      endedReason: 'Rebuilt for grease',
    })
  })
})

describe('the readings of many meters', () => {
  it('are walked by Enter; a right one is taken, a wrong one stays with its reason, also after a reload', async () => {
    const meters = await book.sql<{ id: string; shown: number }>(`
      select meter.id, r.shown_hours as shown from meter
      join machine m on m.site_id = meter.site_id and m.id = meter.machine_id
      join lateral (select shown_hours from meter_reading r where r.site_id = meter.site_id and r.meter_id = meter.id
        order by read_at desc limit 1) r on true
      order by m.tag limit 2`)
    await page.goto('/harrow-point/setup/meters')
    await page.getByRole('link', { name: 'Read the meters' }).click()
    const fields = page.getByRole('table').getByRole('textbox')
    await fields.first().fill(String(meters[0]!.shown + 1))
    await fields.first().press('Enter')
    await page.keyboard.type(String(meters[1]!.shown - 1))
    await page.getByRole('button', { name: 'Enter 2 readings' }).click()
    await page.getByText('1 reading is entered; due days follow. 1 is refused and waits here.').waitFor()
    await page.reload()
    await page.getByText('What was typed here before is back.').waitFor()
    expect(await fields.first().inputValue()).toBe('')
    expect(await fields.nth(1).inputValue()).toBe(String(meters[1]!.shown - 1))
    const [taken] = await book.sql<{ shown: number }>(
      'select shown_hours as shown from meter_reading where meter_id = $1 order by read_at desc limit 1',
      [meters[0]!.id],
    )
    expect(taken).toEqual({ shown: meters[0]!.shown + 1 })
  })
})
