import { parseClearance } from '@shaftbook/bearing/clearance-text'
import { SiteSettings } from '@shaftbook/contract/access'
import { bandOfPosition } from '@shaftbook/contract/band-of-position'
import { judgementOf } from '@shaftbook/contract/judge-mount'
import { array, boolean, constantFrom, integer, record, sample } from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

type Unit = 'mm' | 'um' | 'in' | 'thou'
const written: Record<Unit, (um: number) => string> = {
  mm: (um) => (um / 1000).toFixed(3).replace('.', ','),
  um: (um) => String(um),
  in: (um) => (um / 25_400).toFixed(5),
  thou: (um) => (um / 25.4).toFixed(2),
}
const place = constantFrom('found', 'bench', 'bench', 'bench', 'step', 'mounted', 'mounted', 'mounted')
const reading = record({
  moment: place,
  row: constantFrom('A', 'B'),
  um: integer({ min: 20, max: 140 }),
  struck: boolean(),
})
const sheets = record({
  unit: constantFrom<Unit>('mm', 'um', 'in', 'thou'),
  method: constantFrom('feeler' as const, 'drive-up' as const),
  driveUpMm: constantFrom(null, 0.4, 0.8, 1.2),
  readings: array(reading, { minLength: 2, maxLength: 14 }),
})

// one reading in each row before and after, so that every sheet can be signed
const whole = (['bench', 'mounted'] as const).flatMap((moment) =>
  (['A', 'B'] as const).map((row) => ({ moment, row, um: moment === 'bench' ? 125 : 70, struck: false })),
)

describe('generated sheets', () => {
  it('are judged alike on the device, as drafts, and once they are signed', async () => {
    const type = { kind: 'spherical-roller', series: '222', boreMm: 100, taper: '1:12', clearanceClass: 'C3' } as const
    const own = { ownReductionMinUm: null, ownReductionMaxUm: null, ownResidualMinUm: null, ownBandSource: null }
    const bands = bandOfPosition({ seat: 'adapter-sleeve', ...own }, type, null)
    for (const [index, { unit, method, driveUpMm, readings }] of sample(sheets, { numRuns: 60, seed: 4 }).entries()) {
      const sent = [...whole, ...readings].map(({ moment, row, um, struck }) => ({
        moment,
        row,
        struck,
        step: moment === 'step' ? 1 : null,
        typedValue: written[unit](um),
        typedUnit: unit,
        confirmed: true,
      }))
      const onDevice = judgementOf({
        method,
        bearing: type,
        bands,
        driveUpMm,
        settings: SiteSettings.parse({}),
        readings: sent.map(({ moment, row, struck, typedValue, typedUnit }) => ({
          moment: moment as 'bench' | 'mounted',
          row,
          struck,
          clearanceUm: parseClearance(typedValue, typedUnit, { boreMm: 100 }).valueUm,
        })),
      })
      const told = {
        method,
        driveUpMm,
        nutAngleDeg: 90,
        readings: sent,
        sign: false,
        outOfBandReason: 'As it came out',
      }
      const { positionId } = index % 5 === 0 ? await aSpot(service) : { positionId: service.alpha.locating.id }
      const draft = await technician.post('/mount-records', aMount(service.alpha, { positionId, ...told })).expect(201)
      expect(draft.body.judgement).toEqual(onDevice)
      if (index % 5 !== 0) continue
      const signed = await technician.postIfMatch(`/mount-records/${draft.body.id}/signature`, {}, 1).expect(200)
      expect(signed.body.judgement).toEqual(onDevice)
      expect((await technician.get(`/mount-records/${draft.body.id}`).expect(200)).body.judgement).toEqual(onDevice)
    }
  }, 120_000)
})
