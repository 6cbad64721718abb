import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  expectFlagCount,
  findPosition,
  flagCount,
  flagsAt,
  hasFocus,
  heading,
  mainPlace,
  patience,
  tabTo,
} from '../support/at-the-screen.ts'
import { useOpenBook } from '../support/open-book.ts'

const book = useOpenBook()
let page: Page

beforeAll(async () => {
  page = await book.signedIn('engineer')
})

interface Stay {
  tag: string
  serial: string | null
  fittedOn: string
  removedOn: string | null
  endKind: 'failed' | 'not-failed' | 'lost' | null
}

/** A day of the plant in SQL, as British print has it: 4 Dec 2020, 15 Sept 2019. */
const dayOf = (instant: string): string =>
  `replace(to_char(${instant} at time zone site.time_zone, 'FMDD Mon YYYY'), 'Sep', 'Sept')`

/** Every stay at the position with the most of them, oldest first. */
function longestHistory(): Promise<Stay[]> {
  return book.sql<Stay>(`
    select p.tag, b.serial, r.end_kind as "endKind",
      ${dayOf('f.fitted_at')} as "fittedOn", ${dayOf('f.removed_at')} as "removedOn"
    from fitment f
    join site on site.id = f.site_id
    join position p on p.site_id = f.site_id and p.id = f.position_id
    join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
    left join removal r on r.site_id = f.site_id and r.id = f.removal_id
    where f.position_id = (
      select position_id from fitment where site_id = f.site_id group by 1 order by count(*) desc, 1 limit 1)
    order by f.fitted_at`)
}

const ends = { failed: 'failed', 'not-failed': 'removed, not failed', lost: 'end not known' } as const

describe('the life strip of a position', () => {
  it('leads by keyboard through every fitment, with its start and its end', async () => {
    const stays = await longestHistory()
    const { tag } = stays[0]!
    await findPosition(page, tag)
    const life = page.getByRole('region', { name: `Life of ${tag}` })
    const bars = life.getByRole('button')
    await bars.first().waitFor()
    expect(await bars.count()).toBe(stays.length)

    for (const [at, stay] of stays.entries()) {
      const bar = bars.nth(at)
      await tabTo(page, bar)
      await expect.poll(() => bar.getAttribute('aria-pressed'), patience).toBe('true')
      expect(await bar.getAttribute('aria-label')).toContain(stay.serial ?? '')
      const facts = await life.getByRole('term').allInnerTexts()
      const values = await life.getByRole('definition').allInnerTexts()
      const fact = (label: string): string | undefined => values[facts.indexOf(label)]
      expect(fact('Fitted')).toContain(stay.fittedOn)
      const end = stay.endKind === null ? 'still fitted' : ends[stay.endKind]
      expect(fact('End')).toContain(end)
      expect(fact('End')).toContain(stay.removedOn ?? 'still fitted')
    }
  })

  it('stands as a table with as many rows as the book has stays', async () => {
    const stays = await longestHistory()
    const { tag } = stays[0]!
    await findPosition(page, tag)
    const life = page.getByRole('region', { name: `Life of ${tag}` })
    await tabTo(page, life.getByText('Fitments as a table'))
    await page.keyboard.press('Enter')
    const rows = life.getByRole('table').getByRole('row')
    await rows.first().waitFor()
    expect((await rows.count()) - 1).toBe(stays.length)
    for (const [at, stay] of stays.entries()) expect(await rows.nth(at + 1).innerText()).toContain(stay.fittedOn)
  })
})

it('puts a flag off with a reason, and finds it among those put off', async () => {
  const [flag] = await book.sql<{ tag: string }>(`
    select p.tag from flag join position p on p.site_id = flag.site_id and p.id = flag.position_id
    where flag.kind = 'mount-under' and flag.cleared_at is null and flag.put_off_until is null order by 1 limit 1`)
  const { tag } = flag!
  await page.goto('/harrow-point/flags')
  await heading(page, 'Flags')
  const before = await flagCount(page)
  const flags = await flagsAt(page, tag)
  await flags.getByRole('button', { name: `Put off: Mount under its band, ${tag}` }).click()
  const question = page.getByRole('dialog', { name: 'Put this flag off?' })
  await question.getByRole('button', { name: 'Put off' }).click()
  await question.getByText('Give the reason in a few words').waitFor()
  await question.getByRole('button', { name: '1 week' }).click()
  await question.getByLabel('Reason').fill('The belt runs until the ship has left')
  await question.getByRole('button', { name: 'Put off' }).click()
  await page.getByText('Put off until').first().waitFor()
  await question.waitFor({ state: 'hidden' })

  await expectFlagCount(page, before - 1)
  await page.getByRole('navigation', { name: 'Flags by state' }).getByRole('link', { name: 'Put off' }).click()
  const waiting = page.getByRole('listitem').filter({ hasText: 'The belt runs until the ship has left' })
  await waiting.getByRole('link', { name: tag, exact: true }).waitFor()
})

it('corrects a removal: the later record counts, on the page and on the life strip', async () => {
  const [removal] = await book.sql<{ tag: string; designation: string; removedOn: string }>(`
    select p.tag, type.designation, ${dayOf('r.removed_at')} as "removedOn"
    from removal r join site on site.id = r.site_id
    join position p on p.site_id = r.site_id and p.id = r.position_id
    join fitment f on f.site_id = r.site_id and f.removal_id = r.id
    join bearing b on b.site_id = r.site_id and b.id = f.bearing_id
    join bearing_type type on type.site_id = b.site_id and type.id = b.bearing_type_id
    where r.end_kind = 'failed'
      and (select count(*) from removal other where other.site_id = r.site_id and other.position_id = r.position_id) = 1
    order by p.tag limit 1`)
  const { tag, designation, removedOn } = removal!
  await findPosition(page, tag)
  await page.getByRole('link', { name: `Correct the removal of ${designation}` }).click()
  await heading(page, `Correction of a removal at ${tag}`)

  const sign = page.getByRole('button', { name: 'Sign the correction' })
  await page.getByRole('group', { name: 'It is' }).getByLabel('Removed, not failed').check()
  await sign.click()
  const reason = page.getByLabel('What was wrong, and how do you know?')
  await expect.poll(() => hasFocus(reason), patience).toBe(true)
  await reason.fill('It came out because its sister failed; seen on the bench')
  await sign.click()
  const question = page.getByRole('dialog', { name: 'Sign this correction?' })
  await question.getByText('removed, not failed').waitFor()
  await question.getByRole('button', { name: 'Sign', exact: true }).click()

  await heading(page, tag)
  const left = page.getByRole('table', { name: `Bearings that left ${tag}` })
  await left.getByText('Removed, not failed').waitFor()
  const bar = page
    .getByRole('region', { name: `Life of ${tag}` })
    .getByRole('button')
    .first()
  await expect.poll(() => bar.getAttribute('aria-label'), patience).toContain('removed, not failed')
  expect(await left.innerText()).toContain(removedOn)
})

it('keeps theme and unit: after a reload the page is dark and lengths stand in thou', async () => {
  const [mount] = await book.sql<{ id: string; tag: string; reductionUm: number }>(`
    select m.id, p.tag, m.reduction_nm / 1000.0 as "reductionUm" from mount_record m
    join position p on p.site_id = m.site_id and p.id = m.position_id
    join fitment f on f.site_id = m.site_id and f.mount_record_id = m.id
    where m.verdict = 'inside' order by m.mounted_at desc limit 1`)
  const { id, tag, reductionUm } = mount!
  const ground = (): Promise<number> =>
    page.evaluate(() => Math.max(...getComputedStyle(document.body).backgroundColor.match(/\d+/g)!.map(Number)))
  await page.goto(`/harrow-point/mounts/${id}`)
  await heading(page, `Mount at ${tag}`)
  const verdict = page.getByRole('region', { name: 'Verdict' })
  await verdict.getByText(`${(reductionUm / 1000).toFixed(3)} mm of clearance`).waitFor()
  expect(await ground()).toBeGreaterThan(200)

  const choices = page.getByRole('button', { name: 'Theme, unit and sign-out' })
  await tabTo(page, choices)
  await page.keyboard.press('Enter')
  await page.getByRole('radiogroup', { name: 'Theme' }).getByText('Dark').click()
  await page.getByRole('radiogroup', { name: 'Clearance in' }).getByText('thou').click()
  await verdict.getByText(`${(reductionUm / 25.4).toFixed(1)} thou of clearance`).waitFor()
  await page.reload()
  await verdict.getByText(`${(reductionUm / 25.4).toFixed(1)} thou of clearance`).waitFor()
  expect(await verdict.innerText()).not.toMatch(/\d\.\d+ mm/)
  await expect.poll(ground, patience).toBeLessThan(60)
  await mainPlace(page, 'Mounts').click()
  await page.getByRole('table', { name: 'Mount records' }).getByText('thou').first().waitFor()
})
