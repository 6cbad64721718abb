import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, daysOn, overReadings, type Spot } from './shaft-work.ts'

const service = useTestApp()
let engineer: SiteAgent
let technician: SiteAgent
beforeAll(async () => {
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

/** A spot whose bearing was mounted over its band, so that a flag is up. */
async function overMounted(): Promise<{ spot: Spot; flag: FlagItem }> {
  const spot = await aSpot(service)
  const over = { positionId: spot.positionId, readings: overReadings, outOfBandReason: 'No other bearing here' }
  await technician.post('/mount-records', aMount(service.alpha, over)).expect(201)
  const { items } = (await engineer.get(`/flags?positionId=${spot.positionId}&kind=mount-over`)).body
  return { spot, flag: items[0] }
}

interface FlagItem {
  id: string
  version: number
}

const today = '2026-11-24'
beforeEach(() => service.setNow(new Date(`${today}T12:00:00Z`)))

async function ids(query: string): Promise<string[]> {
  const { items } = (await engineer.get(`/flags?limit=200&${query}`).expect(200)).body
  return items.map((flag: FlagItem) => flag.id)
}

describe('a flag', () => {
  it('says what, where, since when and how far out', async () => {
    service.setNow(new Date())
    const { spot, flag } = await overMounted()
    expect(flag).toMatchObject({
      kind: 'mount-over',
      positionId: spot.positionId,
      tag: spot.tag,
      machineName: 'A machine',
      shaftName: 'Head shaft',
      areaName: 'Gallery',
      since: daysOn(service.alpha, 80),
      facts: { reductionUm: 63, bandMinUm: 45, bandMaxUm: 60 },
      putOffUntil: null,
      clearedAt: null,
    })
    expect((await engineer.get(`/flags/${flag.id}`).expect(200)).body).toEqual(flag)
    await engineer.get(`/flags/${randomUUID()}`).expect(404)
  })

  it('is counted by kind while it is open', async () => {
    service.setNow(new Date())
    const before = (await engineer.get('/flag-counts').expect(200)).body
    await overMounted()
    const after = (await engineer.get('/flag-counts').expect(200)).body
    const over = (counts: { byKind: { kind: string; open: number }[] }) =>
      counts.byKind.find((row) => row.kind === 'mount-over')?.open ?? 0
    expect(over(after)).toBe(over(before) + 1)
    expect(after.open).toBe(after.byKind.reduce((sum: number, row: { open: number }) => sum + row.open, 0))
  })

  it('is found by a part of the tag and by the name of the machine', async () => {
    service.setNow(new Date())
    const { spot, flag } = await overMounted()
    expect(await ids(`search=${spot.tag.toLowerCase()}&kind=mount-over`)).toEqual([flag.id])
    expect(await ids('search=a machine&kind=mount-over')).toContain(flag.id)
    expect(await ids(`search=${randomUUID()}`)).toEqual([])
  })
})

describe('putting a flag off', () => {
  const reason = 'Spare ordered, comes in December'

  async function anOpenFlag(): Promise<FlagItem> {
    service.setNow(new Date())
    const { flag } = await overMounted()
    service.setNow(new Date(`${today}T12:00:00Z`))
    return flag
  }

  it('takes it off the open list and the count until the day of the plant comes, then it is back', async () => {
    const flag = await anOpenFlag()
    const counts = (await engineer.get('/flag-counts')).body
    const reply = await engineer.postIfMatch(`/flags/${flag.id}/put-off`, { until: '2026-12-01', reason }, flag.version)
    expect(reply.status).toBe(200)
    expect(reply.body).toMatchObject({ putOffUntil: '2026-12-01', putOffReason: reason, version: flag.version + 1 })
    expect(await ids('kind=mount-over')).not.toContain(flag.id)
    expect(await ids('state=put-off')).toContain(flag.id)
    expect((await engineer.get('/flag-counts')).body).toMatchObject({
      open: counts.open - 1,
      putOff: counts.putOff + 1,
    })
    // 23:30 on 30 November at the plant (Europe/Berlin), then half past midnight on the day itself
    service.setNow(new Date('2026-11-30T22:30:00Z'))
    expect(await ids('kind=mount-over')).not.toContain(flag.id)
    service.setNow(new Date('2026-11-30T23:30:00Z'))
    expect(await ids('kind=mount-over')).toContain(flag.id)
    expect(await ids('state=put-off')).not.toContain(flag.id)
  })

  it('is kept with the person and the reason in the audit trail', async () => {
    const flag = await anOpenFlag()
    await engineer.postIfMatch(`/flags/${flag.id}/put-off`, { until: '2026-12-01', reason }, flag.version).expect(200)
    const [entry] = (await engineer.get(`/audit-entries?table=flag&rowId=${flag.id}`)).body.items
    expect(entry).toMatchObject({
      person: service.alpha.people.engineer.name,
      before: { put_off_until: null },
      after: { put_off_until: '2026-12-01', put_off_reason: reason },
    })
  })

  it.each([
    [today, 'not-allowed-here'],
    ['2026-11-01', 'not-allowed-here'],
    ['2027-11-26', 'not-allowed-here'],
    ['2027-02-30', 'request-invalid'],
  ])('until %s is refused', async (until, code) => {
    const flag = await anOpenFlag()
    const reply = await engineer.postIfMatch(`/flags/${flag.id}/put-off`, { until, reason }, flag.version)
    expect([reply.body.code, reply.body.fields[0].path]).toEqual([code, 'until'])
    expect((await engineer.get(`/flags/${flag.id}`)).body.putOffUntil).toBeNull()
  })

  it('needs a reason and the version that was read', async () => {
    const flag = await anOpenFlag()
    const at = `/flags/${flag.id}/put-off`
    expect((await engineer.postIfMatch(at, { until: '2026-12-01', reason: ' ' }, flag.version)).status).toBe(400)
    expect((await engineer.post(at, { until: '2026-12-01', reason })).status).toBe(428)
    expect((await engineer.postIfMatch(at, { until: '2026-12-01', reason }, flag.version + 1)).status).toBe(412)
  })

  it('that is cleared is refused', async () => {
    service.setNow(new Date())
    const { spot, flag } = await overMounted()
    const removal = { endKind: 'not-failed', observer: 'Ada Brunn' }
    const when = { removedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    await technician
      .post('/removals', { id: randomUUID(), positionId: spot.positionId, ...when, ...removal })
      .expect(201)
    expect(await ids('state=cleared')).toContain(flag.id)
    const soon = new Date(Date.now() + 5 * 86_400_000).toISOString().slice(0, 10)
    const reply = await engineer.postIfMatch(`/flags/${flag.id}/put-off`, { until: soon, reason }, flag.version)
    expect([reply.status, reply.body.code]).toEqual([409, 'flag-already-cleared'])
  })
})

describe('the open list', () => {
  it('has the most pressing first', async () => {
    service.setNow(new Date())
    await overMounted()
    const { items } = (await engineer.get('/flags?limit=200')).body
    const rank = ['residual-too-small', 'mount-over', 'mount-under', 'several-locating', 'no-locating', 'never-greased']
    const ranks = items.map((flag: { kind: string }) => rank.indexOf(flag.kind)).filter((at: number) => at >= 0)
    expect(new Set(ranks).size).toBeGreaterThan(1)
    expect(ranks).toEqual(ranks.toSorted((a: number, b: number) => a - b))
  })
})
