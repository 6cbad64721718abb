import type { Case } from './fitting-cases.ts'

const d100 = { boreMm: 100, outsideDiameterMm: 180 }
const levels = {
  bearing: 'spherical-roller',
  temperature: '65-to-80',
  dirt: 'light-abrasive',
  moisture: '80-to-90',
  vibration: '5-to-10',
  shaft: 'horizontal',
}

const seals =
  'Which seals fit this shaft and housing? No table has a row for seals: enter the codes of the housing’s maker.'

const kit: Case[] = [
  [
    'bearing-code',
    { bearing: '22220 k-c3' },
    { printed: '22220 K/C3', boreMm: 100, outsideDiameterMm: 180, widthMm: 46, taper: '1:12', clearanceClass: 'C3' },
  ],
  ['part-code', { code: 'h 320' }, { kind: 'sleeve', code: 'H320', system: 'metric' }],
  [
    'kit-proposal',
    {
      bearing: '22220 K',
      locating: true,
      seatWidthMm: 70.3,
      greaseG: 300,
      shaftMm: 89.95,
      shaftSystem: 'metric',
      housingCode: 'SN520',
    },
    { questions: [seals] },
  ],
  [
    'kit-check',
    { bearing: '22220 K', sleeveCode: 'H320', nutCode: 'KM20', lockingCode: 'MB20' },
    { verdict: 'fits', findings: [] },
  ],
  ['kit-check', { bearing: '22320 K', sleeveCode: 'H320' }, { verdict: 'refused' }],
  ['interchange', { needed: '22220 K/C3', offered: '22220 K/C2' }, { verdict: 'never' }],
  // The housing's table: seat 70.3, B 46, two rings of 12.15.
  [
    'locating-rings',
    { seatWidthMm: 70.3, bearingWidthMm: 46, locating: true },
    { outcome: 'rings', count: 2, widthMm: 12.15 },
  ],
  ['locating-check', { locatingTags: ['A-01', 'A-02'], otherTags: [] }, { verdict: 'several', needsOverride: true }],
  // Poisson with mean 3 · 20 / 52 = 1.1538: P(N ≤ 3) = 0.9701, P(N ≤ 2) = 0.889.
  [
    'stock-minimum',
    { demandPerYear: 3, leadTimeWeeks: 20 },
    { minimum: 3, leadTimeDemand: 1.15385, covered: 0.970096 },
  ],
  ['order-advice', { onHand: 2, onOrder: 1, reserved: 1, minimum: 2 }, { order: true, free: 2 }],
  [
    'shelf-life',
    { item: 'grease', packed: '2025-01-31', opened: '2026-01-31', today: '2026-11-24' },
    { expires: '2027-01-31', verdict: 'good' },
  ],
]

const grease: Case[] = [
  ['grease-dose', { outsideDiameterMm: 180, widthMm: 46, entry: 'side' }, { doseG: 41.4 }],
  ['grease-dose', { outsideDiameterMm: 180, widthMm: 46, entry: 'outer-ring-groove' }, { doseG: 16.56 }],
  ['gun-strokes', { doseG: 41.4, gramsPerStroke: 1.2 }, { strokes: 35, deliveredG: 42 }],
  ['dose-check', { givenG: 90, plannedG: 41.4 }, { verdict: 'far-over', ratio: 2.174, counts: false }],
  [
    'temperature-watch',
    { beforeC: 50, hours: [1, 26], celsius: [66, 67] },
    { verdict: 'remove-excess', highestRiseK: 17, warmHours: 25 },
  ],
  // (π/4) · 46 · (180² − 100²)/1000 − 4.9/7.8 · 1000 = 181.07 cm³.
  [
    'first-fill',
    { ...d100, widthMm: 46, massKg: 4.9, level: 'normal', housingVolumeCm3: 1000 },
    { bearingVolumeCm3: 181.069, housingMinG: 180 },
  ],
  [
    'grease-interval',
    { speedRpm: 1000, boreMm: 100, ...levels },
    { baseHours: 1000, product: 0.084, intervalHours: 84 },
  ],
  [
    'grease-interval',
    { speedRpm: 1000, boreMm: 100, ...levels, method: 'halving', outerRingC: 85 },
    { baseHours: 1000, product: 0.084, intervalHours: 84 },
  ],
  ['speed-index', { ...d100, speedRpm: 600 }, { index: 84_000, verdict: 'normal' }],
  ['grease-change', { from: 'lithium12oh', to: 'polyureaConventional' }, { verdict: 'strip' }],
  [
    'grease-change',
    { from: 'lithium12oh', to: 'lithiumComplex', intervalHours: 900 },
    { verdict: 'flush', flushEveryHours: 300 },
  ],
  ['grease-code', { code: 'kp2k-20' }, { nlgi: '2', maxC: '120', minC: -20 }],
  [
    'next-greasing',
    { lastDate: '2026-01-31', calendarMonths: 12, today: '2026-12-27' },
    { state: 'due-soon', dueDate: '2027-01-31', estimated: false },
  ],
]

const life: Case[] = [
  // Straight line over log T between 220 mm²/s at 40 °C and 19 at 100 °C.
  ['oil-viscosity', { celsius: 70, oneC: 40, oneMm2PerS: 220, otherC: 100, otherMm2PerS: 19 }, { mm2PerS: 51.702 }],
  // ν1 = 45 000 · 600^−0.83 / √140 = 18.805.
  [
    'viscosity-ratio',
    { ...d100, mm2PerS: 100, speedRpm: 600 },
    { kappa: 5.3176, requiredMm2PerS: 18.805, verdict: 'thick' },
  ],
  ['equivalent-load', { radialKn: 30, axialKn: 4, x: 1, y: 2.5 }, { equivalentKn: 40 }],
  ['contamination', { level: 'normal_cleanliness', meanDiameterMm: 90 }, { lowest: 0.5, highest: 0.6 }],
  ['fatigue-limit', { staticRatingKn: 820, meanDiameterMm: 100 }, { fatigueLimitKn: 100 }],
  ['minimum-load', { ratingKn: 400, element: 'roller', loadKn: 5 }, { minimumKn: 8, verdict: 'too-light' }],
  // (400/40)^(10/3) = 2154.43; / (60 · 600) · 10⁶ = 59 845 h; aISO at κ 2 and eC · Cu/P = 1.25 is 24.0; a1 at 95 % is 0.64.
  [
    'rating-life',
    {
      element: 'roller',
      ratingKn: 400,
      staticRatingKn: 500,
      loadKn: 40,
      speedRpm: 600,
      meanDiameterMm: 140,
      kappa: 2,
      contamination: 0.5,
      fatigueLimitKn: 100,
      reliability: '95',
    },
    { basicMillions: 2154.43, basicHours: 59_845.4, aIso: 24.0001, a1: 0.64, reliabilityPercent: 95 },
  ],
]

const assembly: Case[] = [
  // 0.20 · 0.75 · 580 MPa · 157 mm² · 16 mm = 218.5 N·m.
  [
    'cap-bolts',
    { size: 'M16', propertyClass: '8.8', state: 'dry', bolts: 4 },
    { torqueNm: 218.54, torqueLbFt: 161.19, preloadKn: 68.295, order: [1, 3, 2, 4], stepsNm: [65.563, 131.13, 218.54] },
  ],
  [
    'cap-bolts',
    { size: 'M16', propertyClass: '8.8', state: 'dry', makerNm: 150 },
    { torqueNm: 150, formulaNm: 218.54, fromNm: 142.5 },
  ],
  ['torque-check', { recorded: 100, unit: 'lb·ft', targetNm: 130 }, { recordedNm: 135.582, counts: true, toNm: 136.5 }],
  // 10 turns a second, 20/140 · cos 10° = 0.140687.
  [
    'ring-frequencies',
    { elements: 18, elementDiameterMm: 20, pitchDiameterMm: 140, contactAngleDeg: 10, speedRpm: 600 },
    { outerRingHz: 77.338, innerRingHz: 102.662, cageHz: 4.2966, rollerPassHz: 68.615 },
  ],
]

/** What is asked for in the stores, at the grease gun and of a bearing that runs. */
export const runningCases: readonly Case[] = [...kit, ...grease, ...life, ...assembly]
