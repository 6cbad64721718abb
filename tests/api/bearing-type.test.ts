import { beforeAll, expect, it } from 'vitest'
import { aBearingType } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, daysOn, insert } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let otherTypeId: string

beforeAll(async () => {
  const { people, siteId } = service.alpha
  technician = await service.signIn(people.technician, 'alpha')
  engineer = await service.signIn(people.engineer, 'alpha')
  const other = aBearingType({ siteId, basicCode: '22220', designation: '22220 K' })
  otherTypeId = other.id
  await insert(service.owner, siteId, 'bearing_type', [other])
})

/** A bearing that was mounted without a fill, so that a flag names it. */
async function aFittedBearing(): Promise<{ id: string; positionId: string }> {
  const { positionId } = await aSpot(service)
  const mount = aMount(service.alpha, { positionId, mountedAt: daysOn(service.alpha, 1), meterShowsHours: 1010 })
  const { body } = await technician.post('/mount-records', mount).expect(201)
  return { id: body.bearing.id, positionId }
}

it('the type of a bearing that was fitted is changed by the engineer only', async () => {
  const { id } = await aFittedBearing()
  const refused = await technician.patch(`/bearings/${id}`, { bearingTypeId: otherTypeId }, 1)
  expect(refused.status).toBe(403)
  expect(refused.body).toMatchObject({ code: 'role-not-allowed', fields: [{ path: 'bearingTypeId' }] })
  expect((await technician.get(`/bearings/${id}`)).body).toMatchObject({ version: 1 })
  await engineer.patch(`/bearings/${id}`, { bearingTypeId: otherTypeId }, 1).expect(200)
})

it('a technician mends the lot of a bearing that is fitted, and the type of one that never was', async () => {
  const { id } = await aFittedBearing()
  await technician.patch(`/bearings/${id}`, { lot: 'L-77' }, 1).expect(200)
  const loose = { id: crypto.randomUUID(), bearingTypeId: service.alpha.bearingTypeId, serial: 'never-fitted-1' }
  await technician.post('/bearings', loose).expect(201)
  const retyped = await technician.patch(`/bearings/${loose.id}`, { bearingTypeId: otherTypeId }, 1)
  expect(retyped.body).toMatchObject({ bearingTypeId: otherTypeId, version: 2 })
})
