import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright-core'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { heading } from '../support/at-the-screen.ts'
import { phone, useWiredBook } from '../support/open-book.ts'

const book = useWiredBook()
const touchPhone = { viewport: phone, hasTouch: true, isMobile: true }
const gunName = 'Gun 1'
const otherGunName = 'Gun 2'
const roundName = 'Ten stops'
/** The stop that takes another grease than the first gun holds. */
const wrongAt = 4
const skippedAt = [2, 6]
const overAt = 8

interface Stop {
  positionId: string
  tag: string
  doseG: number
  greaseId: string
}
let stops: Stop[]
let roundId: string

async function send(page: Page, path: string, data: object): Promise<void> {
  const reply = await page.request.post(`/api/v1/sites/harrow-point${path}`, { data, headers: { origin: book.url } })
  if (reply.status() !== 201) throw new Error(`POST ${path}: ${reply.status()} ${await reply.text()}`)
}

/** Nine stops of one grease and, at its place, one of another; each carries a bearing and has a plan by gun. */
async function tenStops(): Promise<Stop[]> {
  const rows = await book.sql<Stop>(
    `select d.position_id as "positionId", p.tag, plan.dose_g as "doseG", plan.grease_id as "greaseId"
     from grease_due d join position p on p.site_id = d.site_id and p.id = d.position_id
     join grease_plan plan on plan.site_id = d.site_id and plan.id = d.id
     join fitment f on f.site_id = d.site_id and f.position_id = d.position_id and upper_inf(f.fitted)
     where d.task = 'regrease' and d.state in ('due', 'overdue', 'missed', 'due-soon', 'not-due')
     order by d.due_on, p.tag`,
  )
  const [first] = rows
  const same = rows.filter(({ greaseId }) => greaseId === first!.greaseId).slice(0, 9)
  const other = rows.find(({ greaseId }) => greaseId !== first!.greaseId)
  return same.toSpliced(wrongAt, 0, other!)
}

beforeAll(async () => {
  stops = await tenStops()
  const page = await book.signedIn('engineer')
  const weighed = { gramsPerStroke: 1, strokesWeighed: 10, calibratedOn: '2026-01-10' }
  await send(page, '/guns', { id: randomUUID(), name: gunName, greaseId: stops[0]!.greaseId, ...weighed })
  await send(page, '/guns', { id: randomUUID(), name: otherGunName, greaseId: stops[wrongAt]!.greaseId, ...weighed })
  roundId = randomUUID()
  const sent = stops.map(({ positionId }) => ({ id: randomUUID(), positionId, task: 'regrease' }))
  await send(page, '/rounds', { id: roundId, name: roundName, stops: sent })
})
afterEach(() => book.wire.mend())

/** A technician's phone with the pages laid down and an area, and so the rounds, taken along. */
async function technician(): Promise<Page> {
  const page = await book.signedIn('technician', touchPhone)
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  await page.goto('/harrow-point/device')
  const [area] = await book.sql<{ name: string }>('select name from area order by walking_order limit 1')
  await page.getByLabel(area!.name).check()
  await page.getByRole('listitem').filter({ hasText: area!.name }).getByText('just now').waitFor()
  return page
}

async function atStop(page: Page, index: number): Promise<void> {
  await page.getByRole('heading', { level: 2, name: stops[index]!.tag, exact: true }).waitFor()
}

describe('a round of ten stops, walked without a network', () => {
  it('with two skips, a wrong grease that is stopped and an overdose, is in the book whole once there is a network', async () => {
    const page = await technician()
    await book.wire.cut()
    const written = book.wire.asked.length
    await page.goto(`/harrow-point/greasing/rounds/${roundId}/walk`)
    await heading(page, roundName)
    await page.getByLabel('Gun in your hand').selectOption({ label: `${gunName}, 1 g a stroke` })
    await page.getByRole('button', { name: 'Start the round' }).click()
    for (const [index, stop] of stops.entries()) {
      await atStop(page, index)
      await workAt(page, index, stop)
    }
    await page.getByRole('heading', { level: 2, name: 'Summary' }).waitFor()
    await page.getByText('7 done, 0 only looked at, 2 skipped, 1 left open.').waitFor()

    // the one that was left is greased with the gun that holds its grease
    await page.getByRole('button', { name: stops[wrongAt]!.tag }).click()
    await page.getByRole('button', { name: `Take ${otherGunName}` }).click()
    await page.getByRole('button', { name: 'Done, next' }).click()
    await page.getByText('8 done, 0 only looked at, 2 skipped, 0 left open.').waitFor()
    await page.getByRole('button', { name: 'End the round' }).click()
    await page.getByRole('heading', { level: 2, name: 'The round is ended' }).waitFor()
    await page.getByText('12 records are kept on this device').waitFor()
    expect(book.wire.asked.slice(written).filter((asked) => asked.startsWith('POST'))).toEqual([])

    await book.wire.mend()
    await page.goto('/harrow-point/device')
    const ended = 'select 1 as ended from round_walk where ended_at is not null'
    await expect.poll(() => book.sql(ended), { timeout: 60_000 }).toEqual([{ ended: 1 }])
    await page.getByText('Everything that you wrote here is in the book.').waitFor()
    await expectBook()
  }, 240_000)
})

async function workAt(page: Page, index: number, stop: Stop): Promise<void> {
  if (skippedAt.includes(index)) {
    await page.getByRole('button', { name: 'Skip this stop' }).click()
    await page.getByRole('button', { name: 'Nipple broken or missing' }).click()
    await page.getByRole('button', { name: 'Skip, next' }).click()
  } else if (index === wrongAt) {
    await page.getByRole('alert').getByText(`Stop: wrong grease for ${stop.tag}`).waitFor()
    await page.getByRole('button', { name: 'Done, next' }).waitFor({ state: 'detached' })
    await page.getByLabel('Strokes given').waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Leave it open, next' }).click()
  } else if (index === overAt) {
    await page.getByLabel('Strokes given').fill(String(Math.ceil(stop.doseG * 1.6)))
    await page.getByRole('button', { name: 'Done, next' }).click()
    await page.getByText('Say yes where so much went in').waitFor()
    await page.getByLabel(/^Yes, .* g went in$/).check()
    await page.getByLabel('Why more than the plan').fill('Old grease was milky')
    await page.getByLabel('Old grease seen').selectOption({ label: 'Milky, with water' })
    await page.getByRole('button', { name: 'Done, next' }).click()
  } else {
    await page.getByRole('button', { name: 'Done, next' }).click()
  }
}

/** Greasings, the walk, the due list and the flags say what was done, and nothing else. */
async function expectBook(): Promise<void> {
  const given = await book.sql<{ tag: string; doseG: number; result: string; lastIsThis: boolean; overdue: number }>(
    `select p.tag, g.dose_g as "doseG", gw.window_result as result, d.last_greasing_id = g.id as "lastIsThis",
       (select count(*)::int from flag where flag.site_id = g.site_id and flag.position_id = g.position_id
          and flag.kind in ('greasing-overdue', 'never-greased') and flag.cleared_at is null) as overdue
     from greasing g join position p on p.site_id = g.site_id and p.id = g.position_id
     join greasing_window gw on gw.site_id = g.site_id and gw.id = g.id
     join grease_due d on d.site_id = g.site_id and d.position_id = g.position_id and d.task = g.task
     join walk_stop ws on ws.site_id = g.site_id and ws.greasing_id = g.id`,
  )
  const dosed = stops.filter((_, index) => !skippedAt.includes(index))
  expect(given.map(({ tag }) => tag).toSorted()).toEqual(dosed.map(({ tag }) => tag).toSorted())
  // a gun that gives 1 g a stroke: whole grams, never less than planned
  for (const { tag, doseG, result } of given) {
    const { doseG: plannedG } = stops.find((stop) => stop.tag === tag)!
    const over = tag === stops[overAt]!.tag
    expect([tag, doseG]).toEqual([tag, Math.ceil(over ? plannedG * 1.6 : plannedG)])
    expect([tag, result === 'wrong-amount']).toEqual([tag, over])
  }
  const right = given.filter(({ tag }) => tag !== stops[overAt]!.tag)
  expect(right.filter(({ lastIsThis, overdue }) => !lastIsThis || overdue > 0)).toEqual([])
  const skipped = await book.sql<{ tag: string; reason: string }>(
    `select p.tag, ws.reason from walk_stop ws join position p on p.site_id = ws.site_id and p.id = ws.position_id
     where ws.outcome = 'skipped' order by p.tag`,
  )
  const reason = 'Nipple broken or missing'
  const expected = skippedAt.map((index) => ({ tag: stops[index]!.tag, reason }))
  expect(skipped).toEqual(expected.toSorted((a, b) => (a.tag < b.tag ? -1 : 1)))
  const over = `select overdose_confirmed as confirmed, extra_reason as reason, old_grease as old from walk_stop
    where overdose_confirmed`
  expect(await book.sql(over)).toEqual([{ confirmed: true, reason: 'Old grease was milky', old: 'milky' }])
  expect(await book.sql('select count(*)::int as walks, count(ended_at)::int as ended from round_walk')).toEqual([
    { walks: 1, ended: 1 },
  ])
}
