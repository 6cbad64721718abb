import { MountDetails } from '@shaftbook/contract/mount-details'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { describe, expect, it } from 'vitest'
import { asksOf } from './sheet-asks.ts'
import { detailsOf, sheetOfDetails } from './sheet-details.ts'
import { newSheet } from './sheet-new.ts'
import { sheetScope } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'

const timeZone = 'Europe/Berlin'
const lineId = '0175fcb3-2400-755a-b772-29f02550ba38'
const line = {
  id: lineId,
  partId: lineId,
  kind: 'sleeve',
  designation: 'H320',
  partNumber: 'P-1',
  quantity: 1,
  unit: 'pc',
  need: 'must',
}
const place = {
  position: { seat: 'adapter-sleeve', locating: true },
  bearingType: { id: lineId, kind: 'spherical-roller', taper: '1:12', sealed: false },
  fitment: null,
  kit: { lines: [line] },
  plan: null,
} as unknown as PositionOverview
const start = { place, personName: 'Mara Voss', unit: 'mm' as const, timeZone, now: new Date('2026-07-01T10:00:00Z') }
const blank = newSheet(start)
const scope = sheetScope('new', place, place.bearingType)
const sent = (sheet: Sheet) =>
  detailsOf(sheet, asksOf(scope, sheet, { hasMeter: false, kitLineIds: [lineId] }), place.kit, timeZone)

/** What a person told; each field differs from a blank one. */
const told = {
  cautionsSeenBy: 'Mara Voss',
  foundRingCount: '2',
  foundNutSide: 'Drive side',
  foundSeals: 'Lip worn',
  foundGrease: 'Grey',
  foundNote: 'Blue at the bore',
  shaft: { ...blank.shaft, '1x': '89.98', '3y': '89.97' },
  shaftSystem: 'metric',
  shaftSurface: 'dressed',
  shaftDecision: 'use-again',
  housing: { ...blank.housing, '2x': '180.01' },
  housingSeatWidthMm: '70',
  softFootMm: '0.03',
  housingDecision: 'repaired',
  seatNote: 'Burr at the keyway',
  kitCheck: { [lineId]: { found: 'other', foundCode: 'H2320', reason: 'None on the shelf' } },
  lockForwardDeg: '4',
  lockedWith: 'tab',
  lockNote: 'New washer',
  ringsPlaced: 'both-sides',
  sealsFitted: 'Felt',
  sealsTurn: 'yes',
  boltSize: 'M16',
  boltClass: '8.8',
  boltFriction: 'light-oil',
  boltTargetNm: '200',
  boltStepsDone: [30, 60],
  marksMatch: 'yes',
  startedAt: '2026-07-01T12:30',
  startReadings: [{ minutes: '10', temperatureC: '41', vibrationMmS: '2.1' }],
  twinTemperatureC: '38',
  zone: 'B',
  lockChecked: 'no',
  startLaterReason: '',
  startNote: 'Quiet',
} satisfies Partial<Sheet>

describe('detailsOf(sheet, asks, kit, timeZone) and sheetOfDetails(details, timeZone)', () => {
  it('a record gives back everything that the sheet told it', () => {
    const details = MountDetails.parse(sent({ ...blank, ...told }))
    expect(sheetOfDetails(details, timeZone)).toMatchObject(told)
  })
  it('reads a comma, and sends the place of each diameter', () => {
    const { seat } = MountDetails.parse(sent({ ...blank, shaft: { ...blank.shaft, '2y': '89,975' } }))
    expect(seat?.shaft).toEqual([{ plane: 2, direction: 'y', diameterMm: 89.975 }])
  })
  it('sends no line of the kit at which nothing was tapped', () => {
    expect(sent(blank).kitCheck).toEqual([])
  })
  it('a reason for a blank counts no more once the number is there', () => {
    const blanks = { housingSeatWidthMm: 'no-tool', softFootMm: 'no-tool' } as const
    expect(sent({ ...blank, blanks, housingSeatWidthMm: '70' }).blanks).toEqual({ softFootMm: 'no-tool' })
  })
})
