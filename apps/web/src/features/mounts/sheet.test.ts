import { SiteSettings } from '@shaftbook/contract/access'
import { MountDetails } from '@shaftbook/contract/mount-details'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { RemovalDraft } from '@shaftbook/contract/removals'
import { describe, expect, it } from 'vitest'
import { limitsAt } from './band-of-place.ts'
import { faultsByField, suggestionsByField } from './service-faults.ts'
import { asksOf } from './sheet-asks.ts'
import { correctionBody, draftBody, newMountBody } from './sheet-body.ts'
import { draftFaults, signFaults } from './sheet-faults.ts'
import { judgeSheet } from './sheet-judgement.ts'
import { serviceQuestion } from './sheet-readings.ts'
import { newSheet } from './sheet-new.ts'
import { sheetOfRecord } from './sheet-of-record.ts'
import { sheetScope } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'

const id = '0175fcb3-2400-755a-b772-29f02550ba38'
const row = { id, version: 1, createdAt: '2026-01-01T00:00:00Z', updatedAt: '2026-01-01T00:00:00Z' }

/** An empty position for a 22220 K/C3, whose band by the generic guide is 45 to 60 µm. */
const place = {
  position: {
    ...row,
    seat: 'adapter-sleeve',
    locating: true,
    ownReductionMinUm: null,
    ownReductionMaxUm: null,
    ownResidualMinUm: null,
    ownBandSource: null,
    makerChartId: null,
  },
  bearingType: {
    ...row,
    designation: '22220 K/C3',
    kind: 'spherical-roller',
    boreMm: 100,
    taper: '1:12',
    clearanceClass: 'C3',
  },
  fitment: null,
  meter: null,
  plan: null,
  kit: null,
} as unknown as PositionOverview

const timeZone = 'Europe/Berlin'
const now = new Date('2026-07-01T10:00:00Z')
const measuredKeys =
  'shaft.1x housing.1x housingSeatWidthMm softFootMm temperatureC driveUpMm lockForwardDeg greaseBearingG greaseHousingG capBoltTorqueNm'
const blank = newSheet({ place, personName: 'Mara Voss', unit: 'mm', timeZone, now })
const pair = (a: string, b: string) => ({ A: { text: a, meant: false }, B: { text: b, meant: false } })
/** All that a sheet has to tell before it is signed; what was not measured says why. */
const filled: Sheet = {
  ...blank,
  startLaterReason: 'The line starts on Monday',
  blanks: Object.fromEntries(measuredKeys.split(' ').map((key) => [key, 'not-measured'] as const)),
  reason: 'Overhaul',
  bench: [pair('0,15', '0.150')],
  mounted: [pair('0.10', '0.10')],
}

const limits = limitsAt(place.position, place.bearingType, null)
const judge = (sheet: Sheet) => judgeSheet(sheet, place.bearingType, limits, SiteSettings.parse({}))
const scope = sheetScope('new', place, place.bearingType)
const asksFor = (sheet: Sheet) => asksOf(scope, sheet, { hasMeter: false, kitLineIds: [] })
const check = (sheet: Sheet) => ({
  sheet,
  scope,
  asks: asksFor(sheet),
  kit: null,
  kitAnswers: new Map(),
  shaftDiameterMm: null,
  limits,
  judged: judge(sheet),
  hasMeter: false,
  timeZone,
  now,
})

describe('judgeSheet(sheet, type, limits, settings)', () => {
  it('judges comma and point alike: 150 less 100 µm is inside 45 to 60 µm', () => {
    expect(judge(filled).judgement).toMatchObject({ reductionUm: 50, verdict: 'inside' })
  })
  it('finds 75 µm over the band and asks for a reason', () => {
    const { judgement, needsReason } = judge({ ...filled, mounted: [pair('0.07', '0.08')] })
    expect([judgement?.verdict, needsReason]).toEqual(['over', true])
  })
  it('gives no verdict by one row, and shows the way by that row', () => {
    const { judgement, gauge } = judge({ ...filled, mounted: [pair('0.12', '')] })
    expect([judgement?.verdict, gauge.meanUm]).toEqual([null, 120])
  })
  it('asks about 1.5 mm before it judges, and takes it when it is meant', () => {
    const slip = { ...filled, bench: [pair('1.5', '0.15')] }
    expect(judge(slip)).toMatchObject({ openQuestions: 1, judgement: null, needsReason: false })
    const meant = { A: { text: '1.5', meant: true }, B: { text: '0.15', meant: false } }
    expect(judge({ ...slip, bench: [meant] }).openQuestions).toBe(0)
  })
  it('calls a mount by travel alone not proven', () => {
    expect(judge({ ...blank, method: 'drive-up', driveUpMm: '0.8' }).judgement?.verdict).toBe('not-proven')
  })
})

describe('signFaults(checked)', () => {
  it('finds nothing wrong with a whole sheet', () => expect(signFaults(check(filled))).toEqual({}))
  it('names the row that is not read', () => {
    expect(Object.keys(signFaults(check({ ...filled, mounted: [pair('0.10', '')] })))).toEqual(['mounted.0.B'])
  })
  it('wants the reason of a mount that is over its band', () => {
    expect(signFaults(check({ ...filled, mounted: [pair('0.07', '0.08')] }))).toHaveProperty('outOfBandReason')
  })
})

describe('draftFaults(checked)', () => {
  it('refuses a time in the future, an unreadable number and a clearance below 0', () => {
    const faults = draftFaults(
      check({ ...filled, mountedAt: '2026-07-01T12:30', driveUpMm: 'much', bench: [pair('-0.1', '0.15')] }),
    )
    expect(Object.keys(faults).sort()).toEqual(['bench.0.A', 'driveUpMm', 'mountedAt'])
  })
})

describe('newMountBody(input, positionId, sign)', () => {
  const body = newMountBody({ ...check(filled), readings: judge(filled).readings, needsReason: false }, id, true)
  it('sends readings as typed, in the order in which they are taken', () => {
    expect(body.readings.map(({ moment, row, typedValue }) => [moment, row, typedValue])).toEqual([
      ['bench', 'A', '0,15'],
      ['bench', 'B', '0.150'],
      ['mounted', 'A', '0.10'],
      ['mounted', 'B', '0.10'],
    ])
  })
  it('says why there is no hour reading on a machine without a meter, and removes nothing from an empty position', () => {
    expect(body).toMatchObject({ meterShowsHours: null, noHoursReason: 'The machine has no hour meter', removal: null })
  })
})

/** As much of a record as a sheet is filled from. */
function aRecord(over: Partial<MountRecord>): MountRecord {
  return {
    signedAt: null,
    removal: null,
    mountedAt: '2026-06-30T09:00:00Z',
    runHours: 2500,
    noHoursReason: null,
    details: MountDetails.parse({}),
    planId: null,
    bearing: { id, bearingTypeId: id, serial: null, lot: null, maker: null, packedOn: null },
    readings: [],
    reason: 'Overhaul',
    fitter: 'Mara Voss',
    note: '',
    ...over,
  } as unknown as MountRecord
}

describe('draftBody(input)', () => {
  const input = (sheet: Sheet) => {
    const checked = check(sheet)
    return { ...checked, scope: { ...checked.scope, removal: true }, readings: [], needsReason: false }
  }

  it('keeps what is told so far of the bearing that comes out, and the sheet goes on from it', () => {
    const told = { ...blank, evidence: 'Grease grey', cause: '' }
    const { removal } = draftBody(input(told))
    expect(removal).toMatchObject({ endKind: null, evidence: 'Grease grey', cause: null, observer: 'Mara Voss' })
    const draft = aRecord({ removal: RemovalDraft.parse({ ...removal, endKind: 'failed', modeClause: '5.1.2' }) })
    const again = sheetOfRecord(draft, { place, personName: 'Ben Ode', unit: 'mm', timeZone, now })
    expect(again).toMatchObject({ endKind: 'failed', modeClause: '5.1.2', evidence: 'Grease grey', cause: '' })
    expect(again.observer).toBe('Mara Voss')
  })
})

describe('correctionBody(input)', () => {
  const signed = aRecord({ signedAt: '2026-06-30T10:00:00Z' })
  const sheet = sheetOfRecord(signed, { place, personName: 'Mara Voss', unit: 'mm', timeZone, now })
  const bodyOf = (typed: Partial<Sheet>) =>
    correctionBody({ ...check({ ...sheet, ...typed }), readings: [], needsReason: false, hasMeter: true })

  it('leaves the hours as they are while nothing is typed about them', () => {
    expect(bodyOf({})).toMatchObject({ meterShowsHours: null, noHoursReason: null, reason: 'Overhaul' })
  })
  it('tells the right hours, or why there are none', () => {
    expect(bodyOf({ meterShowsHours: '2410,5' })).toMatchObject({ meterShowsHours: 2410.5, noHoursReason: null })
    const noHoursReason = 'Read at another machine'
    expect(bodyOf({ noHoursReason })).toMatchObject({ meterShowsHours: null, noHoursReason })
  })
})

describe('faultsByField(faults, readings)', () => {
  it('finds the field of a reading by its number in the request', () => {
    const { readings } = judge(filled)
    const faults = faultsByField(
      [
        { path: 'readings.3.typedValue', message: 'look again' },
        { path: 'removal.endKind', message: 'say how' },
      ],
      readings,
    )
    expect(faults).toEqual({ 'mounted.0.B': 'look again', endKind: 'say how' })
  })
})

describe('a reading that the service asks about', () => {
  const suggestions = [
    { label: '0.15 mm', typedValue: '0.15', typedUnit: 'mm' },
    { label: '1.5 thou', typedValue: '1.5', typedUnit: 'thou' },
  ]

  it('offers at its field what may have been meant, as text in the unit of the record', () => {
    const { readings } = judge(filled)
    const refused = [{ path: 'readings.0.typedValue', message: 'Is this meant?', suggestions }]
    const asked = suggestionsByField(refused, readings)
    expect(Object.keys(asked)).toEqual(['bench.0.A'])
    // 1.5 thou = 38.1 µm
    expect(serviceQuestion('Is this meant?', asked['bench.0.A'], 'mm')).toEqual({
      sentence: 'Is this meant?',
      offers: [
        { label: '0.15 mm', text: '0.15' },
        { label: '1.5 thou', text: '0.0381' },
      ],
    })
  })
  it('is only marked where nothing is offered', () => {
    const refused = [{ path: 'readings.0.typedValue', message: 'too large' }]
    expect(suggestionsByField(refused, judge(filled).readings)).toEqual({})
    expect(serviceQuestion('too large', undefined, 'mm')).toBeNull()
  })
})
