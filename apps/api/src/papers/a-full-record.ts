import { bandOfPosition } from '@shaftbook/contract/band-of-position'
import { bearing, position } from '@shaftbook/contract/a-22220'
import { judgementOf } from '@shaftbook/contract/judge-mount'
import { MountRecord } from '@shaftbook/contract/mounts'

const typed = {
  bench: { A: ['0,150', '0.152', '0.148'], B: ['0.146', '0.149', '0.151'] },
  mounted: { A: ['0.098', '0.096', '0.099'], B: ['0.095', '0.097', '0.094'] },
} as const

const ids = { record: '01936b4e-7d60-7c31-9d4b-2f0a3c5e7b91', other: '01936b4e-7d60-7c31-9d4b-2f0a3c5e7b92' }

/** For tests: a signed record of a 22220 K/C3 with something in every field. */
export function aFullRecord(): MountRecord {
  const readings = [...settled('bench'), ...steps(), ...settled('mounted')]
  return MountRecord.parse({
    ...sheet,
    id: ids.record,
    version: 2,
    positionId: ids.other,
    tag: 'BE-204-H-DE',
    machineName: 'Bucket elevator 4, receiving',
    fitmentId: ids.other,
    bearing: {
      id: ids.other,
      bearingTypeId: ids.other,
      serial: 'T-88213',
      lot: 'L-2231',
      maker: 'Tarnbeck',
      packedOn: '2026-03-17',
      designation: '22220 K/C3',
      boreMm: 100,
      taper: '1:12',
    },
    clearanceClass: 'C3',
    runHours: 41_263.5,
    noHoursReason: null,
    removal: null,
    readings,
    judgement: judgementOf({
      method: 'feeler',
      bearing,
      bands: bandOfPosition(position, bearing, null),
      readings,
      driveUpMm: sheet.driveUpMm,
      settings,
    }),
    decisions: [
      {
        id: ids.other,
        kind: 'accept-until',
        until: '2027-05-19',
        reason: 'Runs cool beside its twin',
        decidedAt: '2026-11-23T10:15:00Z',
        decidedBy: 'Tomas Ferrand',
      },
    ],
    signedAt: '2026-11-22T16:40:00Z',
    signedBy: 'Mara Lindqvist',
    correctsId: ids.other,
    correctedById: ids.other,
    correctionReason: 'Blade set was read wrong',
    createdAt: '2026-11-22T12:00:00Z',
  })
}

function settled(moment: 'bench' | 'mounted') {
  return (['A', 'B'] as const).flatMap((row) =>
    typed[moment][row].map((typedValue, index) => ({
      moment,
      step: null,
      row,
      number: index + 1,
      clearanceUm: Math.round(Number(typedValue.replace(',', '.')) * 1000),
      typedValue,
      typedUnit: 'mm' as const,
      struck: false,
    })),
  )
}

function steps() {
  const step = { moment: 'step', number: 1, typedUnit: 'um', struck: false } as const
  return [
    { ...step, step: 1, row: 'A', clearanceUm: 131, typedValue: '131' },
    { ...step, step: 1, row: 'B', clearanceUm: 128, typedValue: '128' },
    { ...step, step: 2, row: 'A', clearanceUm: 112, typedValue: '112' },
    { ...step, step: 2, row: 'B', clearanceUm: 11, typedValue: '11', struck: true },
  ] as const
}

const settings = {
  reductionAcceptance: 'simple',
  residualAcceptance: 'proven',
  coverageFactor: 2,
  readingStandardUncertaintyUm: null,
} as Parameters<typeof judgementOf>[0]['settings']

const sheet = {
  mountedAt: '2026-11-22T14:05:00Z',
  fitter: 'Mara Lindqvist',
  checker: 'Ines Okafor',
  permitReference: 'PTW-7731',
  reason: 'Vibration rose since August',
  method: 'feeler',
  byFeelPerson: 'Tomas Ferrand',
  sleeveCode: 'H320',
  nutCode: 'KM20',
  lockingCode: 'MB20',
  ringCount: 2,
  ringWidthMm: 12.5,
  shaftDiameterMm: 89.962,
  temperatureC: 19.5,
  gauge: 'Blade set 7',
  zeroPointMethod: 'hand tight, then first resistance',
  driveUpMm: 0.83,
  nutAngleDeg: 149,
  greaseId: ids.other,
  greaseBearingG: 265,
  greaseHousingG: 410,
  capBoltTorqueNm: 187,
  turnsFree: true,
  note: 'Taper was dry and clean.',
  outOfBandReason: 'No other bearing on the shelf',
  planId: null,
  details: {
    blanks: { 'seat.softFootMm': 'no-tool' },
    cautionsSeenBy: 'Mara Lindqvist',
    asFound: {
      ringCount: 1,
      nutSide: 'drive side',
      seals: 'one lip torn',
      grease: 'dark, 220 g',
      note: 'rust at split',
    },
    seat: {
      shaft: [
        { plane: 1, direction: 'x', diameterMm: 89.962 },
        { plane: 1, direction: 'y', diameterMm: 89.964 },
        { plane: 2, direction: 'x', diameterMm: 89.961 },
      ],
      shaftSystem: 'metric',
      shaftSurface: 'dressed',
      shaftDecision: 'use-again',
      housing: [{ plane: 1, direction: 'x', diameterMm: 180.021 }],
      housingSeatWidthMm: 71.05,
      softFootMm: null,
      housingDecision: 'repaired',
      note: 'burr taken off',
    },
    kitCheck: [
      { kind: 'sleeve', plannedCode: 'H320', found: 'as-planned', foundCode: 'H320', quantity: 1 },
      {
        kind: 'washer',
        plannedCode: 'MB20',
        found: 'other',
        foundCode: 'MB20A',
        quantity: 1,
        reason: 'new stock code',
      },
      { kind: 'seal', plannedCode: 'TSN 520', found: 'missing', quantity: 2, reason: 'old ones cleaned' },
    ],
    driveSteps: [
      { number: 1, driveUpMm: 0.41, nutAngleDeg: 74 },
      { number: 2, driveUpMm: 0.66, nutAngleDeg: 119, struck: true },
    ],
    locking: { forwardDeg: 3, lockedWith: 'tab', note: 'second tab' },
    rings: { placed: 'both-sides', seals: 'lips inwards', sealsTurn: true },
    capBolts: {
      size: 'M16',
      propertyClass: '8.8',
      friction: 'light-oil',
      targetNm: 190,
      stepsDone: [30, 60, 100],
      marksMatch: true,
    },
    startUp: {
      startedAt: '2026-11-22T15:10:00Z',
      readings: [
        { minutes: 10, temperatureC: 31.5, vibrationMmS: 1.9 },
        { minutes: 45, temperatureC: 52, vibrationMmS: 1.7 },
      ],
      twinTemperatureC: 48,
      zone: 'B',
      lockChecked: true,
      notDoneReason: null,
      note: 'fell after one hour',
    },
  },
} as const
