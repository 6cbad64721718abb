/** An input of a calculation and numbers that are known without it: from the tables, by hand, or from the notes beside them. */
export type Case = readonly [name: string, input: object, expected: Readonly<Record<string, unknown>>]

const d100 = { boreMm: 100, outsideDiameterMm: 180 }
const mount = {
  boreMm: 100,
  taper: '1:12',
  clearanceClass: 'C3',
  beforeRowAUm: [125, 120],
  beforeRowBUm: [125, 130],
  afterRowAUm: [70, 75],
  afterRowBUm: [75, 70],
}

const clearance: Case[] = [
  // Means 125 and 72.5; the guide has 45 to 60 µm and 50 µm for C3. One reading: √(2.3² + 1² + (2.9² + 4² + 5²)/4) = 4.318,
  // a difference √2 times that, U twice: 12.213.
  [
    'clearance-verdict',
    { ...mount, driveUpMm: 0.8 },
    {
      verdict: 'inside',
      residual: 'enough',
      reductionUm: 52.5,
      bandMinUm: 45,
      bandMaxUm: 60,
      expandedReductionUm: 12.213,
      gaugeCannotProveBand: true,
      residualMinUm: 50,
      ratio: 15.238,
      classVerdict: 'inside',
      sentence: null,
    },
  ],
  // 125 − 65 = 60 µm lies outside a band of the position's own of 40 to 55 µm.
  [
    'clearance-verdict',
    { ...mount, afterRowAUm: [65], afterRowBUm: [65], bandMinUm: 40, bandMaxUm: 55, residualMinUm: 70 },
    { verdict: 'over', residual: 'not-proven', reductionUm: 60, bandMaxUm: 55 },
  ],
  // ISO 5753-1, 80 < d ≤ 100, tapered.
  ['clearance-class', { boreMm: 100, boreKind: 'tapered', clearanceClass: 'C3' }, { minUm: 110, maxUm: 140 }],
  ['clearance-class', { boreMm: 100, boreKind: 'cylindrical', clearanceClass: 'CN' }, { minUm: 60, maxUm: 100 }],
  [
    'class-check',
    { benchUm: 105, boreMm: 100, boreKind: 'tapered', clearanceClass: 'C3' },
    { verdict: 'under', readsLike: ['CN'] },
  ],
  [
    'row-readings',
    { rowAUm: [100, 100, 100], rowBUm: [130] },
    { meanUm: 115, differenceUm: 30, limitUm: 17.25, rowsAgree: false },
  ],
  ['sagging-ring-reading', { leftUm: 60, rightUm: 70, bottomUm: 150 }, { readingUm: 140 }],
  [
    'clearance-band',
    { boreMm: 100, taper: '1:12', clearanceClass: 'C3', benchUm: 120 },
    { minUm: 45, maxUm: 60, driveUpMinMm: 0.7, driveUpMaxMm: 0.9, residualMinUm: 50, half: 'lower', aimMaxUm: 52.5 },
  ],
  // One reading in each row: √(2.3² + 1² + 49.41/2) = 5.567.
  [
    'reading-uncertainty',
    { rowAReadings: 1, rowBReadings: 1 },
    { standardUm: 5.567, expandedUm: 11.134, standardDifferenceUm: 7.873 },
  ],
  // 12e-6 · 20 K · 160 mm = 38.4 µm.
  [
    'operating-clearance',
    { ...d100, mountedUm: 73, innerRingC: 80, outerRingC: 60 },
    { operatingUm: 34.6, changeUm: -38.4, verdict: 'left' },
  ],
]

const noStack = 'No stack of up to 3 blades of this set makes 20 µm: take the next one below or above.'

const feeler: Case[] = [
  ['feeler-stack', { wantedUm: 130, bladesUm: [30, 40, 50, 100] }, { totalUm: 130, bladesUm: [100, 30] }],
  ['feeler-stack', { wantedUm: 20, bladesUm: [30, 40] }, { aboveUm: 30, sentence: noStack }],
  [
    'feeler-sequence',
    { benchUm: 125, targetUm: 100, bladesUm: [50, 60, 40, 30] },
    {
      stacks: [
        { totalUm: 120, bladesUm: [50, 40, 30] },
        { totalUm: 110, bladesUm: [60, 50] },
        { totalUm: 100, bladesUm: [60, 40] },
      ],
    },
  ],
  ['go-no-go', { passesUm: 70, stopsUm: 80 }, { fromUm: 70, toUm: 80, middleUm: 75, standardUm: 2.8868 }],
  ['read-clearance', { typed: '5 thou', unit: 'mm' }, { valueUm: 127 }],
  ['read-clearance', { typed: '0,125', unit: 'mm' }, { valueUm: 125, sentence: null }],
  [
    'chart-row-check',
    { overMm: 80, inclMm: 100, reductionMinUm: 45, reductionMaxUm: 60, taper: '1:12' },
    { verdict: 'plausible', perMille: 0.58333, suggestions: [] },
  ],
]

const driveUp: Case[] = [
  // The worked example: d 100, D 180, B 46, s 0.80, smoothing 8, solid.
  [
    'drive-up',
    { ...d100, travelMm: 0.8, taper: '1:12', widthMm: 46, smoothingUm: 8 },
    {
      interferenceUm: 58.667,
      reductionUm: 48.889,
      contactPressureMpa: 18.463,
      hoopStressMpa: 102.37,
      driveForceKn: 51.137,
    },
  ],
  // (45 / 0.8333 + 8) · 12 = 744 µm.
  ['travel-for-reduction', { ...d100, reductionUm: 45, taper: '1:12' }, { travelMm: 0.744, reductionUm: 45 }],
  ['nut-angle', { travelMm: 0.7, nutCode: 'KM20', taper: '1:12' }, { angleDeg: 126, pitchMm: 2 }],
  ['nut-travel', { angleDeg: 270, nutCode: 'HM3160', taper: '1:12' }, { travelMm: 3, wedgeUm: 250 }],
  ['lock-step', { nutCode: 'KM20', tabs: 17, taper: '1:12' }, { stepDeg: 5.29412, axialUm: 29.412, wedgeUm: 2.451 }],
  [
    'drive-up-ratio',
    { driveUpMm: 0.5, reductionUm: 50, taper: '1:12', boreMm: 100 },
    { verdict: 'too-low', ratio: 10, lowest: 12, highest: 20 },
  ],
  // Bench 125, now 105: 20 µm taken out of 45 to 60; travel is 15 to 15.556 times the reduction, so that
  // 25 µm need 0.375 to 0.389 mm, 67.5° to 70.02° of a pitch of 2 mm.
  [
    'drive-up-guidance',
    {
      boreMm: 100,
      taper: '1:12',
      clearanceClass: 'C3',
      benchRowAUm: [125],
      benchRowBUm: [125],
      stepsRowAUm: [105],
      stepsRowBUm: [105],
      pitchMm: 2,
      bladesUm: [50, 65, 70, 80, 100],
    },
    {
      advice: 'go-on',
      reductionUm: 20,
      leftNearUm: 25,
      leftFarUm: 40,
      stopFromUm: 65,
      stopToUm: 80,
      travelMinMm: 0.375,
      travelMaxMm: 0.389,
      angleMinDeg: 67.5,
      angleMaxDeg: 70.02,
      ratioFrom: 'band-source',
      goesUm: 65,
      stopsUm: 80,
      smallestStepUm: 15.747,
    },
  ],
  ['smoothing', { rzAUm: 4, rzBUm: 6 }, { smoothingUm: 8 }],
]

const seats: Case[] = [
  // ISO 286: h9 of 80 to 120 mm is −87 µm, h10 −140 µm; 100 µm · 12 = 1.2 mm.
  [
    'shaft-check',
    { nominalMm: 100, readingsMm: [99.95, 99.9], taper: '1:12' },
    { verdict: 'inside-h10', smallestUm: -100, spreadUm: 50, travelLostMm: 1.2 },
  ],
  ['inch-or-metric', { shaftMm: 74.61 }, { inchShaft: '2 15/16', metricShaftMm: 75 }],
  ['fit-reduction', { ...d100, interferenceUm: 40 }, { reductionUm: 26.667, effectiveUm: 32, share: 0.83333 }],
  ['hot-fit', { interferenceUm: 60, boreMm: 100 }, { heatingK: 91.667, ringC: 111.667, verdict: 'within-limit' }],
  ['usual-seat', { boreMm: 120 }, { shaftClass: 'n6', housingClass: 'H7' }],
]

/** What is asked for while a bearing is fitted. */
export const fittingCases: readonly Case[] = [...clearance, ...feeler, ...driveUp, ...seats]
