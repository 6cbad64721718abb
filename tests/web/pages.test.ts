import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { patterns } from '../../apps/web/src/paths.ts'
import { axeFindings, sidewaysScroll } from '../support/axe.ts'
import { desk, narrowPhone, useOpenBook } from '../support/open-book.ts'
import { stillness, watchRequests } from '../support/settled.ts'

const book = useOpenBook()
const places: Record<string, string> = {}

/** Addresses of every kind of page; `:name` is a record of the demo. */
const pages = [
  '/harrow-point/flags',
  '/harrow-point/flags?state=put-off',
  '/harrow-point/flags?q=nothing-is-called-so',
  '/harrow-point/positions',
  '/harrow-point/positions?view=table',
  '/harrow-point/positions/:position',
  '/harrow-point/positions/:position/remount',
  '/harrow-point/positions/:position/removal',
  '/harrow-point/positions/:position/removals/:removal/correction',
  '/harrow-point/scan',
  '/harrow-point/at/:position',
  '/harrow-point/at/no-such-tag',
  '/harrow-point/labels',
  '/harrow-point/labels?paper=a4',
  '/harrow-point/mounts',
  '/harrow-point/mounts/planned',
  '/harrow-point/mounts/planned/:plan',
  '/harrow-point/positions/:position/plan-mount',
  '/harrow-point/mounts/:mount',
  '/harrow-point/mounts/:mount/correction',
  '/harrow-point/mounts/:mount/draft',
  '/harrow-point/greasing',
  '/harrow-point/greasing?log=:position',
  '/harrow-point/greasing?log=:position&do=check-oil',
  '/harrow-point/greasing?plan=:position',
  '/harrow-point/greasing?tab=done',
  '/harrow-point/greasing?tab=sealed',
  '/harrow-point/greasing?task=turn-shaft',
  '/harrow-point/greasing/rounds',
  '/harrow-point/greasing/rounds/new',
  '/harrow-point/greasing/rounds/:round',
  '/harrow-point/greasing/rounds/:round/change',
  '/harrow-point/greasing/rounds/:round/walk',
  '/harrow-point/greasing/walks/:walk',
  '/harrow-point/greasing/guns',
  '/harrow-point/greasing/ahead',
  '/harrow-point/greasing/ahead?weeks=13&area=:area',
  '/harrow-point/greasing/compliance',
  '/harrow-point/greasing/compliance?months=24&by=person',
  '/harrow-point/greasing/compliance?position=:position',
  '/harrow-point/greasing/calendar-and-mail',
  '/harrow-point/stores',
  '/harrow-point/stores/parts',
  '/harrow-point/stores/parts/new',
  '/harrow-point/stores/parts/:part',
  '/harrow-point/stores/parts/:part/change',
  '/harrow-point/stores/kits',
  '/harrow-point/stores/kits/new',
  '/harrow-point/stores/kits/:kit',
  '/harrow-point/stores/kits/:kit/change',
  '/harrow-point/stores/positions/:position',
  '/harrow-point/life',
  '/harrow-point/device',
  '/harrow-point/bench',
  '/harrow-point/bench?q=no-such-calculation',
  '/harrow-point/bench/kit-proposal?bearing=22220%20K&locating=yes&seatWidthMm=70.3',
  '/harrow-point/bench/grease-dose?outsideDiameterMm=5&widthMm=46&entry=side',
  '/harrow-point/setup',
  '/harrow-point/setup/site',
  '/harrow-point/setup/people',
  '/harrow-point/setup/people/new',
  '/harrow-point/setup/places',
  '/harrow-point/setup/places/area/:area',
  '/harrow-point/setup/places/machine/:machine',
  '/harrow-point/setup/places/shaft/:shaft',
  '/harrow-point/setup/enter/positions?within=:shaft',
  '/harrow-point/setup/change/positions/:position',
  '/harrow-point/setup/meters',
  '/harrow-point/setup/meters/:meter',
  '/harrow-point/setup/meters/readings',
  '/harrow-point/setup/bearing-types',
  '/harrow-point/setup/greases',
  '/harrow-point/setup/gauges',
  '/harrow-point/setup/enter/gauges',
  '/harrow-point/setup/charts',
  '/harrow-point/setup/charts/new',
  '/harrow-point/setup/charts/new?from=:chart',
  '/harrow-point/setup/charts/:chart',
  '/harrow-point/setup/charts/:chart/change',
  '/harrow-point/setup/audit',
  '/no-such-site/flags',
]

beforeAll(async () => {
  const [row] = await book.sql<Record<string, string>>(`
    select p.id as position, f.mount_record_id as mount, p.kit_id as kit,
      (select l.part_id from kit_line l where l.site_id = p.site_id and l.kit_id = p.kit_id order by l.line_number limit 1) as part,
      p.shaft_id as shaft, s.machine_id as machine, m.area_id as area,
      (select id from meter where meter.site_id = p.site_id limit 1) as meter,
      (select id from maker_chart c where c.site_id = p.site_id limit 1) as chart,
      (select id from mount_plan l where l.site_id = p.site_id and l.ended_at is null limit 1) as plan,
      (select r.id from removal r where r.site_id = p.site_id and r.position_id = p.id limit 1) as removal
    from position p
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join machine m on m.site_id = s.site_id and m.id = s.machine_id
    join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
    join flag on flag.site_id = p.site_id and flag.position_id = p.id and flag.kind = 'mount-over' and flag.cleared_at is null
    where p.kit_id is not null order by p.tag limit 1`)
  Object.assign(places, row)
  Object.assign(places, await aWalkedRound(places['position'] as string))
})

/** Makes a round of one stop, and begins to walk it. */
async function aWalkedRound(positionId: string): Promise<{ round: string; walk: string }> {
  const page = await book.signedIn('engineer')
  const [round, walk] = [randomUUID(), randomUUID()]
  const send = async (path: string, data: object): Promise<void> => {
    const url = `/api/v1/sites/harrow-point${path}`
    const reply = await page.request.post(url, { data, headers: { origin: book.url } })
    expect(reply.status()).toBe(201)
  }
  const stops = [{ id: randomUUID(), positionId }]
  await send('/guns', { id: randomUUID(), name: 'Gun 1', gramsPerStroke: 1.2 })
  await send('/rounds', { id: round, name: 'First Monday', stops })
  await send('/round-walks', { id: walk, roundId: round, startedAt: new Date().toISOString(), stops })
  return { round, walk }
}

const addressOf = (pattern: string): string => pattern.replaceAll(/:(\w+)/g, (_, name: string) => places[name] ?? '')

it('every page of a site is among the addresses below', () => {
  const addresses = pages.map((address) => address.replace('/harrow-point/', '').split('?')[0] ?? '')
  const missing = Object.values(patterns).filter((pattern) => {
    const shape = new RegExp(`^${pattern.replaceAll(/\$\w+/g, '[^/]+')}$`)
    return !addresses.some((address) => shape.test(address))
  })
  expect(missing).toEqual([])
})

const themes = ['light', 'dark'] as const

/** Turns the device's theme, which the page follows, and looks at the page in each. */
async function expectNoFindings(page: Page): Promise<void> {
  for (const theme of themes) {
    await page.emulateMedia({ colorScheme: theme })
    await page.locator(`html[data-mantine-color-scheme="${theme}"]`).waitFor()
    await stillness(page)
    expect({ theme, findings: await axeFindings(page) }).toEqual({ theme, findings: [] })
  }
  expect(await sidewaysScroll(page)).toBe(0)
}

describe.each([
  { window: 'a desk', viewport: desk },
  { window: 'a phone of 360 px', viewport: narrowPhone },
] as const)('in both themes on $window', ({ viewport }) => {
  let page: Page
  let settled: () => Promise<void>

  beforeAll(async () => {
    page = await book.signedIn('manager', { viewport, hasTouch: viewport === narrowPhone })
    settled = watchRequests(page)
  })
  afterAll(() => page.context().close())

  it.each(pages)('%s does not scroll sideways and axe finds nothing', async (pattern) => {
    await page.goto(addressOf(pattern))
    await settled()
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
    await expectNoFindings(page)
  })

  it('the way in does not scroll sideways and axe finds nothing', async () => {
    const stranger = await book.stranger({ viewport })
    await stranger.goto('/sign-in')
    await stranger.getByRole('button', { name: 'Sign in' }).waitFor()
    await expectNoFindings(stranger)
    await stranger.context().close()
  })
})
