import { beforeAll, describe, expect, it } from 'vitest'
import { inSite } from '../../seeds/builders/in-site.ts'
import { insertRows } from '../../seeds/builders/insert-rows.ts'
import { aBearing, aFitment, aRemoval } from '../../seeds/builders/record-rows.ts'
import { nameRecords } from '../../seeds/builders/sign-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aSpot, day, type Spot } from './shaft-work.ts'

const service = useTestApp()
let stores: SiteAgent
beforeAll(async () => {
  stores = await service.signIn(service.alpha.people.stores, 'alpha')
})

interface Stay {
  /** Days before now. */
  from: number
  to?: number
  startRunHours?: number
  runHours?: number
  hoursSource?: 'meter' | 'estimate'
  end?: { endKind: 'failed' | 'not-failed' | 'lost'; modeClause?: string }
  /** What a further record says instead. */
  corrected?: { endKind: 'failed' | 'not-failed' | 'lost'; modeClause?: string }
}

const ago = (days: number) => new Date(Date.now() - days * day)

async function aStay({ positionId }: Spot, stay: Stay): Promise<void> {
  const { siteId, bearingTypeId, people } = service.alpha
  const bearing = aBearing({ siteId, bearingTypeId })
  const fitment = aFitment({
    siteId,
    positionId,
    bearingId: bearing.id,
    fittedAt: ago(stay.from),
    removedAt: stay.to === undefined ? null : ago(stay.to),
    startRunHours: stay.startRunHours ?? null,
    runHours: stay.runHours ?? null,
    hoursSource: stay.hoursSource ?? 'none',
  })
  const shared = {
    siteId,
    fitmentId: fitment.id,
    positionId,
    signedBy: people.technician.id,
    removedAt: ago(stay.to ?? 0),
  }
  const removal = stay.end && aRemoval({ ...shared, ...stay.end })
  const correction =
    removal &&
    stay.corrected &&
    aRemoval({ ...shared, ...stay.corrected, correctsId: removal.id, correctionReason: 'Looked again' })
  await inSite(service.owner, siteId, async () => {
    await insertRows(service.owner, 'bearing', [bearing])
    await insertRows(service.owner, 'fitment', [fitment])
    await insertRows(service.owner, 'removal', removal ? [removal] : [])
    await insertRows(service.owner, 'removal', correction ? [correction] : [])
    const counts = correction ?? removal
    await nameRecords(service.owner, [{ fitmentId: fitment.id, mountRecordId: null, removalId: counts?.id ?? null }])
  })
}

describe('the life summary', () => {
  it('is all zero where no bearing was ever fitted', async () => {
    const reply = await stores.get('/life-summary').expect(200)
    expect(reply.body).toEqual({
      failures: 0,
      notFailed: 0,
      lost: 0,
      running: 0,
      hours: { metered: 0, estimated: 0, running: 0, staysWithout: 0 },
      byMode: [],
      worst: [],
    })
  })

  it('counts endings as the latest correction says, hours by their source, and positions that failed twice', async () => {
    const worse = await aSpot(service)
    const once = await aSpot(service)
    await aStay(worse, {
      from: 80,
      to: 60,
      runHours: 400,
      hoursSource: 'meter',
      end: { endKind: 'failed', modeClause: '5.2.2' },
    })
    await aStay(worse, {
      from: 60,
      to: 40,
      runHours: 500,
      hoursSource: 'estimate',
      end: { endKind: 'failed', modeClause: '5.2.2' },
    })
    await aStay(worse, { from: 40, startRunHours: 700 })
    await aStay(once, {
      from: 80,
      to: 70,
      runHours: 100,
      hoursSource: 'meter',
      end: { endKind: 'not-failed' },
      corrected: { endKind: 'failed' },
    })
    await aStay(once, {
      from: 70,
      to: 50,
      runHours: 300,
      hoursSource: 'meter',
      end: { endKind: 'failed' },
      corrected: { endKind: 'not-failed' },
    })
    await aStay(once, { from: 50, to: 30, end: { endKind: 'lost' } })
    await aStay(once, { from: 30 })

    const reply = await stores.get('/life-summary').expect(200)
    expect(reply.body).toEqual({
      failures: 3,
      notFailed: 1,
      lost: 1,
      running: 2,
      // The meter of each spot shows 1000 h: the bearing fitted at 700 h has run 300.
      hours: { metered: 400 + 100 + 300, estimated: 500, running: 300, staysWithout: 2 },
      byMode: [
        { modeClause: '5.2.2', modeTerm: expect.stringMatching(/abrasive/i), failures: 2 },
        { modeClause: null, modeTerm: null, failures: 1 },
      ],
      worst: [
        {
          positionId: worse.positionId,
          tag: worse.tag,
          machineName: expect.any(String),
          failures: 2,
          stays: 3,
          runHours: 400 + 500 + 300,
          staysWithoutHours: 0,
        },
      ],
    })
  })

  it('knows nothing of another site', async () => {
    const beta = await service.signIn(service.beta.people.engineer, 'beta')
    const reply = await beta.get('/life-summary').expect(200)
    expect(reply.body).toMatchObject({ failures: 0, running: 0, worst: [] })
  })
})
