import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  expectFlagCount,
  findPosition,
  flagCount,
  flagsAt,
  heading,
  mainPlace,
  tabTo,
} from '../support/at-the-screen.ts'
import {
  askToSign,
  benchUmAt,
  fillSheet,
  goToStep,
  judgedPlaces,
  mmWithComma,
  mountedEarlier,
  onStep,
  signSheet,
  type JudgedPlace,
} from '../support/mount-sheet.ts'
import { phone, useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
let page: Page
let places: JudgedPlace[]

beforeAll(async () => {
  places = await judgedPlaces(book)
  page = await book.signedIn('technician', { viewport: phone, hasTouch: true, isMobile: true })
})

/** Opens the mount sheet of a position, from its page. */
async function openSheet(tag: string): Promise<void> {
  await findPosition(page, tag)
  await page.getByRole('link', { name: 'Log remount' }).click()
  await heading(page, `Remount at ${tag}`)
}

describe('a mount that finished 10 µm over its band, and the one after it', () => {
  it('raises a flag when it is signed; a further mount inside the band clears it', async () => {
    const place = places[0]!
    const { tag } = place
    const benchUm = benchUmAt(place)
    await findPosition(page, tag)
    const before = await flagCount(page)
    await openSheet(tag)

    await fillSheet(page, {
      reason: 'Noise at the round',
      serial: 'T-1001',
      benchUm,
      mountedUm: benchUm - (place.bandMaxUm + 10),
    })
    await mountedEarlier(page, 90)
    await page.getByLabel('Why does the mount stay as it is?').fill('The sleeve is at its end; ordered')
    await signSheet(page, tag)

    const verdict = page.getByRole('region', { name: 'Verdict' })
    await verdict.getByText('Over', { exact: true }).waitFor()
    await verdict.getByText('0.010 mm too much').waitFor()
    await expectFlagCount(page, before + 1)
    const flags = await flagsAt(page, tag)
    expect(await flags.count()).toBe(1)
    await flags.getByText('Mount over its band').waitFor()
    await flags.getByText('by 0.010 mm').waitFor()

    await flags.getByRole('link', { name: `Log remount: Mount over its band, ${tag}` }).click()
    await heading(page, `Remount at ${tag}`)
    await goToStep(page, 'Strip and look')
    await page.getByText('serial T-1001').waitFor()
    await goToStep(page, 'Make safe')
    await fillSheet(page, {
      reason: 'Driven too far before',
      serial: 'T-1002',
      benchUm,
      mountedUm: benchUm - (place.bandMinUm + place.bandMaxUm) / 2,
    })
    await signSheet(page, tag)

    await verdict.getByText('Inside', { exact: true }).waitFor()
    await verdict.getByText('Residual: enough').waitFor()
    await expectFlagCount(page, before)
    expect(await (await flagsAt(page, tag)).count()).toBe(0)
    await findPosition(page, tag)
    await page.getByText('T-1002').first().waitFor()
  })
})

describe('a mount sheet', () => {
  it('asks about 1.3 typed for 0.13, and takes the answer', async () => {
    await openSheet(places[1]!.tag)
    await goToStep(page, 'Bearing and bench clearance')
    const reading = page.getByLabel('Bench, row A, reading 1')
    await reading.fill('1.3')
    const question = page.getByRole('alert').filter({ hasText: 'Row A.' })
    await question.getByText('1.3 mm is a very large clearance').waitFor()
    await question.getByRole('button', { name: '0.130 mm' }).click()
    expect(Number(await reading.inputValue())).toBe(0.13)
    await question.waitFor({ state: 'detached' })
  })

  it('is on the step of its address: after a reload with what was typed, and a step back by the back button', async () => {
    await openSheet(places[2]!.tag)
    await page.getByLabel('Why is a bearing fitted?').fill('Overhaul of the drum')
    await goToStep(page, 'Strip and look')
    await page.getByRole('group', { name: 'How did it end?' }).getByLabel('Removed, not failed').check()
    await goToStep(page, 'Bearing and bench clearance')
    await page.getByLabel('Bench, row B, reading 2').fill('0,155')
    await page.reload()
    await onStep(page, 'Bearing and bench clearance')
    await page.getByText('What was typed here before is back.').waitFor()
    expect(await page.getByLabel('Bench, row B, reading 2').inputValue()).toBe('0,155')
    await page.goBack()
    await onStep(page, 'Strip and look')
    expect(
      await page.getByRole('group', { name: 'How did it end?' }).getByLabel('Removed, not failed').isChecked(),
    ).toBe(true)
    await goToStep(page, 'Make safe')
    expect(await page.getByLabel('Why is a bearing fitted?').inputValue()).toBe('Overhaul of the drum')
  })

  it('is left half filled in without a question, found again at its position, and goes on there', async () => {
    const { tag } = places[3]!
    await openSheet(tag)
    await page.getByLabel('Why is a bearing fitted?').fill('Condition')
    await findPosition(page, tag)
    await page.getByRole('link', { name: /^Go on with the sheet/ }).click()
    await heading(page, `Remount at ${tag}`)
    expect(await page.getByLabel('Why is a bearing fitted?').inputValue()).toBe('Condition')
  })

  it('says what is missing, at the first field of the first step, before it is sent', async () => {
    await openSheet(places[4]!.tag)
    await goToStep(page, 'Sign')
    await page.getByRole('button', { name: 'Sign', exact: true }).click()
    await onStep(page, 'Make safe')
    const reason = page.getByLabel('Why is a bearing fitted?')
    await page.getByText('Say in a few words why the bearing was fitted.').waitFor()
    await expect.poll(() => reason.evaluate((field) => field === document.activeElement)).toBe(true)
    await goToStep(page, 'Strip and look')
    await page.getByText('Say how the old bearing ended.').waitFor()
    await goToStep(page, 'Drive up')
    await page.getByText('Row B is not read: one row alone proves nothing.').first().waitFor()
  })

  it('keeps everything when the service refuses it, says where it is wrong, and is signed once that is mended', async () => {
    const place = places[5]!
    const { tag } = place
    const benchUm = benchUmAt(place)
    const mountedUm = benchUm - place.bandMinUm - 5
    const [last] = await book.sql<{ before: string }>(
      `select to_char(fitted_at - interval '2 days', 'YYYY-MM-DD"T"HH24:MI') as before from fitment
       where position_id = $1 and removed_at is null`,
      [place.id],
    )
    await openSheet(tag)
    await fillSheet(page, { reason: 'Planned change', serial: 'T-1003', benchUm, mountedUm })
    const mountedAt = page.getByLabel('Mounted at, by the clock of the plant')
    const right = await mountedAt.inputValue()
    await mountedAt.fill(last!.before)
    await askToSign(page, tag)

    await expect.poll(() => mountedAt.getAttribute('aria-invalid'), { timeout: 15_000 }).toBe('true')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    await mountedAt.fill(right)
    await goToStep(page, 'Drive up')
    expect(await page.getByLabel('Mounted, row B, reading 2').inputValue()).toBe(mmWithComma(mountedUm))
    await goToStep(page, 'Sign')
    await signSheet(page, tag)
    await page.getByRole('region', { name: 'Verdict' }).getByText('Inside', { exact: true }).waitFor()
  })

  it('is kept on the device when it is signed without a network, says so, and is sent once when it is back', async () => {
    const place = places[6]!
    const { tag } = place
    const benchUm = benchUmAt(place)
    await openSheet(tag)
    await fillSheet(page, {
      reason: 'Planned change',
      serial: 'T-1004',
      benchUm,
      mountedUm: benchUm - place.bandMinUm - 5,
    })
    await page.context().setOffline(true)
    await askToSign(page, tag)
    await page
      .getByText(/is kept on this device/)
      .first()
      .waitFor()

    await page.context().setOffline(false)
    const stays = () =>
      book.sql<{ open: string }>(
        `select count(*) as open from fitment f join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
         where f.position_id = $1 and f.removed_at is null and b.serial = 'T-1004'`,
        [place.id],
      )
    await expect.poll(stays, { timeout: 30_000 }).toEqual([{ open: '1' }])
  })
})

describe('an overdue greasing, by keyboard only', () => {
  it('is logged from its flag with the dose of the plan; the flag is gone and the count is one less', async () => {
    const [due] = await book.sql<{ tag: string; doseG: number }>(`
      select p.tag, plan.dose_g as "doseG" from flag
      join position p on p.site_id = flag.site_id and p.id = flag.position_id
      join grease_plan plan on plan.site_id = p.site_id and plan.position_id = p.id and plan.ended_at is null
      where flag.kind = 'greasing-overdue' and flag.cleared_at is null and flag.put_off_until is null
      order by p.tag limit 1`)
    const { tag, doseG } = due!
    await page.goto('/harrow-point/flags')
    await heading(page, 'Flags')
    const before = await flagCount(page)
    await tabTo(page, page.getByRole('searchbox', { name: 'Search' }))
    await page.keyboard.type(tag)
    await page.getByText('1 flag matches').waitFor()
    await tabTo(page, page.getByRole('link', { name: `Log greasing: Regreasing overdue, ${tag}` }))
    await page.keyboard.press('Enter')

    const sheet = page.getByRole('dialog', { name: `Log greasing of ${tag}` })
    await tabTo(page, sheet.getByLabel('Dose'))
    expect(await sheet.getByLabel('Dose').inputValue()).toBe(String(doseG))
    await tabTo(page, sheet.getByRole('button', { name: `Log ${doseG} g` }))
    await page.keyboard.press('Enter')
    await page.getByText(`${doseG} g at ${tag} is logged`).waitFor()
    await sheet.waitFor({ state: 'hidden' })

    await tabTo(page, mainPlace(page, `Flags ${before - 1} open`))
    await page.keyboard.press('Enter')
    await heading(page, 'Flags')
    await tabTo(page, page.getByRole('searchbox', { name: 'Search' }))
    await page.keyboard.type(tag)
    await page.getByText('0 flags match').waitFor()
  })
})
