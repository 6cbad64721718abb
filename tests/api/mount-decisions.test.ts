import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import {
  aMount,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  overReadings,
  plannedRemoval,
  typedReadings,
} from './shaft-work.ts'
import { draftOf, inDays } from './sheet-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

const over = { readings: overReadings, outOfBandReason: 'No other bearing on the shelf' }

/** A mount over its band, signed at a spot of its own. */
async function anOverMount() {
  const { positionId, tag } = await aSpot(service)
  const body = aMount(service.alpha, { positionId, ...over })
  await technician.post('/mount-records', body).expect(201)
  return { positionId, tag, body, id: body.id }
}

function decide(mountId: string, told: Record<string, unknown> = {}, agent = engineer) {
  const accepted = { id: randomUUID(), kind: 'accept-until', until: inDays(30), reason: 'Watched at every round' }
  return agent.post(`/mount-records/${mountId}/decisions`, { ...accepted, ...told })
}

async function flagsOf(positionId: string, state: 'open' | 'put-off') {
  const reply = await engineer.get(`/flags?positionId=${positionId}&state=${state}`).expect(200)
  return (reply.body.items as Record<string, unknown>[]).filter(({ kind }) => kind !== 'never-greased')
}

describe('a mount that is accepted until a day', () => {
  it('keeps its verdict; its flags are put off until then with the reason', async () => {
    const { id, positionId } = await anOverMount()
    const before = (await engineer.get(`/mount-records/${id}`)).body
    const reply = await decide(id).expect(201)
    expect(reply.body).toEqual({
      ...before,
      decisions: [
        {
          id: expect.any(String),
          kind: 'accept-until',
          until: inDays(30),
          reason: 'Watched at every round',
          decidedAt: expect.stringMatching(/Z$/),
          decidedBy: 'engineer of alpha',
        },
      ],
    })
    expect(await flagsOf(positionId, 'open')).toEqual([])
    expect(await flagsOf(positionId, 'put-off')).toMatchObject([
      { kind: 'mount-over', putOffUntil: inDays(30), putOffReason: 'Watched at every round' },
    ])
  })

  it('puts off the flag of a residual clearance that is not proven', async () => {
    const { positionId } = await aSpot(service)
    // 57 µm are left: within U = 11.1 µm of the residual minimum of 50 µm
    const readings = typedReadings({ benchA: ['0.112'], benchB: ['0.112'], mountedA: ['0.057'], mountedB: ['0.057'] })
    const body = aMount(service.alpha, { positionId, readings, outOfBandReason: 'Finest blade' })
    await technician.post('/mount-records', body).expect(201)
    expect(await flagsOf(positionId, 'open')).toMatchObject([
      { kind: 'residual-not-proven', facts: { mountedMeanUm: 57, residualMinUm: 50 } },
    ])
    await decide(body.id).expect(201)
    expect(await flagsOf(positionId, 'put-off')).toMatchObject([{ kind: 'residual-not-proven' }])
  })

  it('leaves the other flags of the position open', async () => {
    const { id, positionId } = await anOverMount()
    await decide(id).expect(201)
    const open = await engineer.get(`/flags?positionId=${positionId}`).expect(200)
    expect(open.body.items.map(({ kind }: { kind: string }) => kind)).toEqual(['never-greased'])
  })
})

describe('a correction of an accepted mount', () => {
  async function corrected(mountedA: string) {
    const { id, positionId, body } = await anOverMount()
    await decide(id).expect(201)
    const { id: _id, positionId: _position, bearing: _bearing, sign: _sign, ...sheet } = body
    const readings = typedReadings({ benchA: ['0.125'], benchB: ['0.125'], mountedA: [mountedA], mountedB: ['0.062'] })
    const correction = { ...sheet, ...over, readings, id: randomUUID(), correctionReason: 'Row A was read wrongly' }
    await technician.post(`/mount-records/${id}/corrections`, correction).expect(201)
    return positionId
  }

  it('brings its flags back where the numbers are others than those that were accepted', async () => {
    const positionId = await corrected('0.040')
    expect(await flagsOf(positionId, 'put-off')).toEqual([])
    const over = (await flagsOf(positionId, 'open')).find(({ kind }) => kind === 'mount-over')
    expect(over).toMatchObject({ putOffUntil: null, facts: { reductionUm: 74 } })
  })

  it('leaves them put off where the numbers are the same', async () => {
    const positionId = await corrected('0.062')
    expect(await flagsOf(positionId, 'put-off')).toMatchObject([{ kind: 'mount-over', putOffUntil: inDays(30) }])
  })
})

describe('a mount that is to be done again', () => {
  it('brings back the flags that were put off, with why', async () => {
    const { id, positionId } = await anOverMount()
    await decide(id).expect(201)
    const again = await decide(id, { kind: 'do-again', until: null, reason: 'It runs hot' }).expect(201)
    expect(again.body.decisions.map(({ kind }: { kind: string }) => kind)).toEqual(['do-again', 'accept-until'])
    expect(await flagsOf(positionId, 'open')).toMatchObject([
      { kind: 'mount-over', putOffUntil: null, facts: { doAgainReason: 'It runs hot', reductionUm: 63 } },
    ])
    await decide(id).expect(201)
    const [accepted] = await flagsOf(positionId, 'put-off')
    expect(accepted?.['facts']).not.toHaveProperty('doAgainReason')
  })
})

describe('a decision', () => {
  it('sent twice is one', async () => {
    const { id } = await anOverMount()
    const told = { id: randomUUID() }
    await decide(id, told).expect(201)
    expect((await decide(id, told).expect(201)).body.decisions).toHaveLength(1)
    await expectRefused(decide(id, { ...told, reason: 'Another one' }), 409, 'id-already-used', 'id')
  })

  it('is not for the technician', async () => {
    const { id } = await anOverMount()
    const reply = await decide(id, {}, technician)
    expect([reply.status, reply.body.code]).toEqual([403, 'role-not-allowed'])
  })

  it.each([
    [{ until: null }, 400, 'request-invalid', 'Say until which day the mount is accepted as it is.'],
    [{ until: inDays(-2) }, 422, 'not-allowed-here', 'Put the flag off until a day after today'],
    [{ until: inDays(400) }, 422, 'not-allowed-here', 'A flag is put off for a year at most'],
    [{ kind: 'do-again' }, 422, 'not-allowed-here', 'is not accepted until a day: leave it out'],
  ])('is refused with the day at fault: %j', async (told, status, code, sentence) => {
    const { id } = await anOverMount()
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      expect((await expectRefused(decide(id, told), status, code, 'until')).detail).toContain(sentence)
    })
  })

  it.each([
    ['of a draft', { ...over, sign: false }, 'This is a draft: it is decided on once it is signed.'],
    ['of a mount inside its limits', {}, 'This mount is inside its limits: there is nothing to decide.'],
  ])('is refused where it is %s', async (_, told, sentence) => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, ...told })
    await technician.post('/mount-records', body).expect(201)
    const reply = await decide(body.id)
    expect([reply.status, reply.body.code, reply.body.detail]).toEqual([422, 'not-allowed-here', sentence])
  })

  it('is refused on a record that was corrected, and where the bearing has left', async () => {
    const { id, body, positionId, tag } = await anOverMount()
    const { bearing: _bearing, meterShowsHours: _hours, ...sheet } = draftOf(body)
    const correction = { ...sheet, id: randomUUID(), correctionReason: 'The gauge was another' }
    await technician.post(`/mount-records/${id}/corrections`, correction).expect(201)
    await expectRefused(decide(id), 409, 'already-corrected', 'id')
    const removal = { id: randomUUID(), positionId, removedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    await technician.post('/removals', { ...removal, ...plannedRemoval }).expect(201)
    const reply = await decide(correction.id)
    expect([reply.status, reply.body.code]).toEqual([422, 'not-allowed-here'])
    expect(reply.body.detail).toContain(`This bearing left ${tag} on ${daysOn(service.alpha, 85).slice(0, 10)}`)
  })

  it('of a record of another site is not there', async () => {
    const { id } = await anOverMount()
    const stranger = await service.signIn(service.beta.people.engineer, 'beta')
    await expectRefused(decide(id, {}, stranger), 404, 'not-found', 'id')
  })

  it('costs as many statements after others as the first', async () => {
    const { id } = await anOverMount()
    await decide(id).expect(201)
    const second = await countStatements(() => decide(id, { until: inDays(40) }).expect(201))
    expect(await countStatements(() => decide(id, { until: inDays(50) }).expect(201))).toBe(second)
  })
})

// last, since the clock stands still from then on
describe('a mount whose day has come', () => {
  it('has its flags open again on that day', async () => {
    const { id, positionId } = await anOverMount()
    await decide(id, { until: inDays(10) }).expect(201)
    service.setNow(new Date(Date.now() + 11 * 86_400_000))
    expect(await flagsOf(positionId, 'open')).toMatchObject([{ kind: 'mount-over' }])
  })
})
