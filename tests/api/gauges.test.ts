import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { ask, expectRefused } from './shaft-work.ts'

const service = useTestApp()
let engineer: SiteAgent
beforeAll(async () => {
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

const aGauge = (over: object = {}) => ({
  id: randomUUID(),
  name: `Set ${randomUUID()}`,
  bladesUm: [30, 40, 50],
  ...over,
})

describe('a gauge', () => {
  it('keeps its blades to the nanometre', async () => {
    const bladesUm = [38.1, 50.8, 63.5]
    const gauge = aGauge({ kind: 'feeler-inch', bladesUm, checkedUntil: '2027-03-01', note: 'In the crane shop' })
    const made = await engineer.post('/gauges', gauge).expect(201)
    expect(made.body).toMatchObject(gauge)
    const stored = 'select blades_nm from gauge where id = $1'
    expect(await ask(service.owner, service.alpha.siteId, stored, [gauge.id])).toEqual([
      { blades_nm: [38_100, 50_800, 63_500] },
    ])
    const list = await engineer.get('/gauges?search=crane').expect(200)
    expect(list.body.items).toEqual([made.body])
  })

  it('is changed by the version that was read', async () => {
    const gauge = aGauge()
    await engineer.post('/gauges', gauge).expect(201)
    const changed = await engineer.patch(`/gauges/${gauge.id}`, { bladesUm: [20, 30] }, 1).expect(200)
    expect(changed.body).toMatchObject({ bladesUm: [20, 30], kind: 'feeler-metric', version: 2 })
  })

  it.each([
    ['out of order', [40, 30]],
    ['twice', [30, 30.0004]],
    ['none', []],
    ['of no thickness', [0, 30]],
    ['too many', Array.from({ length: 61 }, (_, index) => index + 1)],
  ])('is refused with blades %s', async (_, bladesUm) => {
    const reply = await engineer.post('/gauges', aGauge({ bladesUm }))
    expect([reply.status, reply.body.code]).toEqual([400, 'request-invalid'])
    expect(reply.body.fields[0].path).toMatch(/^bladesUm/)
  })

  it('has a name of its own', async () => {
    const gauge = aGauge()
    await engineer.post('/gauges', gauge).expect(201)
    await expectRefused(engineer.post('/gauges', aGauge({ name: gauge.name })), 409, 'name-already-used', 'name')
  })

  it('is entered by the engineer, not by the technician', async () => {
    const technician = await service.signIn(service.alpha.people.technician, 'alpha')
    const reply = await technician.post('/gauges', aGauge())
    expect([reply.status, reply.body.code]).toEqual([403, 'role-not-allowed'])
  })
})
