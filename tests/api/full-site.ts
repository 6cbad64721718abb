import { randomUUID } from 'node:crypto'
import type { SmallSite } from '../../seeds/builders/small-site.ts'
import type { SiteAgent, TestApp } from '../support/app.ts'
import { aJpeg, photoPath } from '../support/pictures.ts'
import { aDose, aGun, aRound, aWalk } from './round-work.ts'
import { aPlan, wholeKit } from './sheet-work.ts'
import { aMount, daysOn, overReadings, plannedRemoval } from './shaft-work.ts'

/** Fills a small site through the service, so that every table that a site owns has rows of it. */
export async function fillSite(service: TestApp, site: SmallSite): Promise<void> {
  const manager = await service.signIn(site.people.manager, site.code)
  const sent = async (path: string, body: object): Promise<void> => {
    const reply = await manager.post(path, body)
    if (reply.status !== 201) throw new Error(`POST ${path}: ${reply.status} ${JSON.stringify(reply.body)}`)
  }
  const plan = aPlan(site)
  await sent('/mount-plans', plan)
  const over = aMount(site, {
    readings: overReadings,
    outOfBandReason: 'No other bearing on the shelf',
    planId: plan.id,
    details: { kitCheck: wholeKit() },
  })
  await sent('/mount-records', over)
  const decision = { id: randomUUID(), kind: 'do-again', reason: 'It will run hot' }
  await sent(`/mount-records/${over.id}/decisions`, decision)
  await sent('/mount-plans', aPlan(site))
  await sent('/gauges', { id: randomUUID(), name: `Blades of ${site.code}`, bladesUm: [30, 40, 50] })
  await sent('/mount-records', aMount(site, { positionId: site.nonLocating.id }))
  await sent('/removals', {
    id: randomUUID(),
    positionId: site.nonLocating.id,
    removedAt: daysOn(site, 85),
    meterShowsHours: 2600,
    ...plannedRemoval,
  })
  await sent('/greasings', {
    id: randomUUID(),
    positionId: site.locating.id,
    greasedAt: daysOn(site, 86),
    doseG: 42,
    meterShowsHours: 2610,
  })
  await sent('/observations', {
    id: randomUUID(),
    positionId: site.locating.id,
    observedAt: daysOn(site, 86),
    temperatureC: 48,
  })
  await sent(`/grease-plans/${site.locating.planId}/reviews`, { id: randomUUID(), reason: 'Looked at on the round' })
  await walkRound(site, sent)
  await addChange(site, sent)
  await addPhoto(manager, site)
  await sent('/calendar-feeds', { id: randomUUID(), areaId: site.areaId })
  const mails = { weekdays: [1], hour: 6, areaIds: [site.areaId], alsoWhenNothing: false }
  await manager.patch('/mail-digest', mails).expect(200)
  await addChart(sent)
  await changeArea(manager, site)
}

async function addChange(site: SmallSite, sent: (path: string, body: object) => Promise<void>): Promise<void> {
  const grease = {
    id: randomUUID(),
    name: `Calder HT of ${site.code}`,
    thickener: 'polyureaShearStable',
    nlgiGrade: '2',
  }
  await sent('/greases', grease)
  const change = { id: randomUUID(), positionId: site.nonLocating.id, toGreaseId: grease.id, way: 'strip' }
  await sent('/grease-changes', { ...change, reason: 'The new grease bears the heat' })
}

async function walkRound(site: SmallSite, sent: (path: string, body: object) => Promise<void>): Promise<void> {
  const gun = aGun(site)
  await sent('/guns', gun)
  const round = aRound([site.locating.id, site.nonLocating.id])
  await sent('/rounds', round)
  const walk = aWalk(round, daysOn(site, 87))
  await sent('/round-walks', walk)
  const dose = aDose(walk.stops[0]?.id ?? '', daysOn(site, 87), { gun, strokes: 35 })
  await sent(`/round-walks/${walk.id}/results`, dose)
}

async function addPhoto(manager: SiteAgent, site: SmallSite): Promise<void> {
  const reply = await manager.postFile(photoPath(site, { caption: `Gallery of ${site.code}` }), await aJpeg())
  if (reply.status !== 201) throw new Error(`POST /photos: ${reply.status} ${JSON.stringify(reply.body)}`)
}

async function addChart(sent: (path: string, body: object) => Promise<void>): Promise<void> {
  const band = { overMm: 80, inclMm: 120, taper: '1:12', reductionMinUm: 40, reductionMaxUm: 55 }
  await sent('/maker-charts', {
    id: randomUUID(),
    maker: 'Tarnbeck',
    document: 'Sheet 4',
    edition: '1',
    rows: [{ id: randomUUID(), ...band }],
  })
}

async function changeArea(manager: SiteAgent, site: SmallSite): Promise<void> {
  await manager.patch(`/areas/${site.areaId}`, { name: `Gallery of ${site.code}` }, 1).expect(200)
}
