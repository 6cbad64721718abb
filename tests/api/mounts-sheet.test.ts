import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { MountDetails } from '@shaftbook/contract/mount-details'
import { aBearingType } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import {
  aBearing,
  aMount,
  ask,
  aSpot,
  expectNothingWritten,
  expectRefused,
  insert,
  insideReadings,
  typedReadings,
} from './shaft-work.ts'
import { aKitCheckLine, aSpotWithKit, draftOf, wholeKit } from './sheet-work.ts'

const service = useTestApp()
let technician: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

const step = (number: number, row: 'A' | 'B', typedValue: string, over: object = {}) => {
  return { moment: 'step', step: number, row, typedValue, typedUnit: 'mm', ...over }
}
const details = {
  blanks: { temperatureC: 'no-tool' },
  cautionsSeenBy: 'Ada Brunn',
  asFound: { ringCount: 2, grease: 'Grey and stiff' },
  seat: { shaft: [{ plane: 1, direction: 'x', diameterMm: 89.96 }], shaftSystem: 'metric', shaftDecision: 'use-again' },
  driveSteps: [{ number: 1, driveUpMm: 0.4, nutAngleDeg: 72 }],
  locking: { forwardDeg: 4, lockedWith: 'tab' },
  startUp: { readings: [{ minutes: 30, temperatureC: 41 }], lockChecked: true },
}

describe('the details of a sheet', () => {
  it('are kept whole, and what was left out is said as such', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, details })
    const made = await technician.post('/mount-records', body).expect(201)
    expect(made.body.details).toEqual(MountDetails.parse(details))
    expect(made.body.details).toMatchObject({ rings: null, kitCheck: [], startUp: { twinTemperatureC: null } })
    expect((await technician.get(`/mount-records/${body.id}`)).body.details).toEqual(made.body.details)
  })

  it('of a record without any are empty', async () => {
    const { positionId } = await aSpot(service)
    const made = await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    expect(made.body).toMatchObject({ details: MountDetails.parse({}), planId: null, decisions: [] })
  })

  it('are replaced as a whole by a correction, whose parts are written down too', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, details })
    await technician.post('/mount-records', body).expect(201)
    const { bearing: _bearing, meterShowsHours: _hours, ...sheet } = draftOf(body)
    const wrongNut = aKitCheckLine('nut', 'KM20', { found: 'other', foundCode: 'AN20' })
    const right = { cautionsSeenBy: 'Bo Lund', kitCheck: [wrongNut] }
    const correction = { ...sheet, id: randomUUID(), correctionReason: 'Another nut went on', details: right }
    const made = await technician.post(`/mount-records/${body.id}/corrections`, correction).expect(201)
    expect(made.body.details).toEqual(MountDetails.parse(right))
    expect(await fittedParts(correction.id)).toMatchObject([{ code: 'AN20', kind: 'nut', quantity: 1 }])
  })
})

describe('readings of found and steps, and struck ones', () => {
  it('are kept with their step and count in no verdict', async () => {
    const { positionId } = await aSpot(service)
    const readings = [
      { moment: 'found', row: 'A', typedValue: '0.31', typedUnit: 'mm' },
      step(1, 'A', '0.10'),
      step(1, 'B', '0.10'),
      step(1, 'A', '0.01', { struck: true }),
      step(2, 'A', '0.09'),
      ...insideReadings,
      { moment: 'bench', row: 'A', typedValue: '1.9', typedUnit: 'mm', struck: true },
      { moment: 'mounted', row: 'B', typedValue: '0.9', typedUnit: 'mm', struck: true },
    ]
    const made = await technician.post('/mount-records', aMount(service.alpha, { positionId, readings })).expect(201)
    expect(made.body.judgement).toMatchObject({ benchMeanUm: 125, mountedMeanUm: 70, reductionUm: 55 })
    expect(made.body.readings).toHaveLength(13)
    const steps = made.body.readings.filter((reading: { moment: string }) => reading.moment === 'step')
    expect(steps).toMatchObject([
      { step: 1, row: 'A', number: 1, clearanceUm: 100, struck: false },
      { step: 1, row: 'A', number: 2, clearanceUm: 10, struck: true },
      { step: 1, row: 'B', number: 1 },
      { step: 2, row: 'A', number: 1, clearanceUm: 90 },
    ])
  })

  it('do not stand in for a row that is missing', async () => {
    const { positionId } = await aSpot(service)
    const bench = typedReadings({ benchA: ['0.12'], benchB: ['0.12'], mountedA: ['0.07'] })
    const struck = { moment: 'mounted', row: 'B', typedValue: '0.07', typedUnit: 'mm', struck: true }
    const body = aMount(service.alpha, { positionId, readings: [...bench, struck] })
    await expectRefused(technician.post('/mount-records', body), 422, 'row-missing', 'readings')
  })

  it.each([
    [step(1, 'A', '0.1', { step: null }), 'Say at which step of the drive-up this was read.'],
    [
      { moment: 'bench', step: 1, row: 'A', typedValue: '0.1', typedUnit: 'mm' },
      'Only a reading of the drive-up belongs to a step: leave the step out.',
    ],
  ])('are refused where step and moment contradict each other: %j', async (reading, sentence) => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, readings: [reading], sign: false })
    const problem = await expectRefused(
      technician.post('/mount-records', body),
      400,
      'request-invalid',
      'readings.0.step',
    )
    expect(problem.detail).toBe(sentence)
  })
})

describe('what does not apply to a position', () => {
  /** A draft with it is kept, its signature is refused at the fields. */
  async function expectNotSigned(positionId: string, over: object, paths: string[]) {
    const body = aMount(service.alpha, { positionId, ...over })
    let detail = ''
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const request = technician.post('/mount-records', body)
      const problem = await expectRefused(request, 422, 'not-allowed-here', paths[0] ?? '')
      expect(problem.fields.map(({ path }) => path)).toEqual(paths)
      detail = problem.detail
    })
    await technician.post('/mount-records', { ...body, sign: false }).expect(201)
    return detail
  }

  it('rings where the shaft is not located', async () => {
    const { positionId, tag } = await aSpot(service, { position: { locating: false } })
    const rings = { ringCount: 2, ringWidthMm: 12, details: { rings: { placed: 'both-sides' } } }
    const detail = await expectNotSigned(positionId, rings, ['ringCount', 'ringWidthMm', 'details.rings.placed'])
    expect(detail).toContain(`${tag} does not locate the shaft`)
    const none = { ringCount: 0, details: { asFound: { ringCount: 2 }, rings: { seals: 'Split', placed: null } } }
    await technician.post('/mount-records', aMount(service.alpha, { positionId, ...none })).expect(201)
  })

  it('a drive-up and a sleeve where the bearing sits on a plain seat', async () => {
    const type = aBearingType({ siteId: service.alpha.siteId, taper: null, designation: '22220/C3' })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [type])
    const position = { bearingTypeId: type.id, seat: 'cylindrical' as const }
    const { positionId } = await aSpot(service, { position })
    const bearing = aBearing(service.alpha, { bearingTypeId: type.id })
    const drive = { driveUpMm: 0.7, nutAngleDeg: 126, sleeveCode: 'H320', details: { driveSteps: [{ number: 1 }] } }
    const readings = [step(1, 'A', '0.1')]
    const paths = ['driveUpMm', 'nutAngleDeg', 'details.driveSteps', 'readings', 'sleeveCode']
    const detail = await expectNotSigned(positionId, { bearing, readings, ...drive }, paths)
    expect(detail).toContain('sits on no taper')
  })
})

async function fittedParts(mountRecordId: string) {
  return await ask<Record<string, unknown>>(
    service.owner,
    service.alpha.siteId,
    `select part_id, code, kind, quantity, unit, kit_line_id, reason from fitted_part
     where mount_record_id = $1 order by kind, code`,
    [mountRecordId],
  )
}

describe('the kit check of a sheet', () => {
  it('is written down line by line when it is signed, with the parts of the register', async () => {
    const { positionId, nut } = await aSpotWithKit(service)
    const kitLineId = randomUUID()
    const kitCheck = [
      aKitCheckLine('sleeve', 'H320'),
      aKitCheckLine('nut', 'KM20', { partId: nut.id, kitLineId }),
      aKitCheckLine('washer', 'MB20', { found: 'missing', reason: 'The old one is whole' }),
      aKitCheckLine('grease', '', {
        found: 'other',
        foundCode: nut.number,
        quantity: 0.3,
        unit: 'kg',
        reason: 'Asked',
      }),
    ]
    const body = aMount(service.alpha, { positionId, details: { kitCheck } })
    await technician.post('/mount-records', { ...body, sign: false }).expect(201)
    expect(await fittedParts(body.id)).toEqual([])
    await technician.postIfMatch(`/mount-records/${body.id}/signature`, {}, 1).expect(200)
    const { partIds } = service.alpha.locating
    const plain = { part_id: null, quantity: 1, unit: 'pc', kit_line_id: null, reason: '' }
    expect(await fittedParts(body.id)).toEqual([
      { ...plain, kind: 'grease', code: nut.number, part_id: nut.id, quantity: 0.3, unit: 'kg', reason: 'Asked' },
      { ...plain, kind: 'nut', code: 'KM20', part_id: nut.id, kit_line_id: kitLineId },
      { ...plain, kind: 'sleeve', code: 'H320', part_id: partIds.sleeve },
      {
        ...plain,
        kind: 'washer',
        code: 'MB20',
        quantity: 0,
        reason: 'The old one is whole',
        part_id: partIds.washer,
      },
    ])
  })

  it('refuses parts that never go together, each at its line', async () => {
    const { positionId } = await aSpot(service)
    const kitCheck = wholeKit()
    const wrong = [
      { ...kitCheck[0], found: 'other', foundCode: '22220 K' },
      kitCheck[1],
      { ...kitCheck[2], found: 'other', foundCode: 'AN20' },
    ]
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const body = aMount(service.alpha, { positionId, details: { kitCheck: wrong } })
      const request = technician.post('/mount-records', body)
      const problem = await expectRefused(request, 422, 'part-does-not-fit', 'details.kitCheck.0')
      expect(problem.fields.map(({ path }) => path)).toEqual(['details.kitCheck.0', 'details.kitCheck.2'])
      expect(problem.detail).toContain('CN has less clearance than C3')
      expect(problem.detail).toContain('inch')
    })
  })

  it('refuses a metric sleeve where the thread was read as an inch one', async () => {
    const { positionId } = await aSpot(service)
    const inch = { seat: { shaftSystem: 'inch' }, kitCheck: wholeKit() }
    const body = aMount(service.alpha, { positionId, details: inch })
    await expectRefused(technician.post('/mount-records', body), 422, 'part-does-not-fit', 'details.kitCheck.1')
  })

  it('asks for the reason of another or a missing part, and takes it with one', async () => {
    const { positionId } = await aSpot(service)
    const [, sleeve, nut] = wholeKit()
    const missing = { ...nut, found: 'missing' }
    const body = aMount(service.alpha, { positionId, details: { kitCheck: [sleeve, missing] } })
    const request = technician.post('/mount-records', body)
    const problem = await expectRefused(request, 422, 'reason-missing', 'details.kitCheck.1.reason')
    expect(problem.detail).toBe('KM20 is missing: say why the mount goes on without it.')
    const told = { kitCheck: [sleeve, { ...missing, reason: 'The old one is used again' }] }
    await technician.post('/mount-records', { ...body, details: told }).expect(201)
  })

  it('costs as many statements for 40 lines as for one', async () => {
    const lines = (count: number) =>
      Array.from({ length: count }, (_, index) => aKitCheckLine('consumable', `Paste ${index}`))
    const sign = async (count: number) => {
      const { positionId } = await aSpot(service)
      const body = aMount(service.alpha, { positionId, details: { kitCheck: lines(count) } })
      return await countStatements(() => technician.post('/mount-records', body).expect(201))
    }
    const one = await sign(1)
    expect(await sign(40)).toBe(one)
  })
})
