import { meanDiameterMm } from '@shaftbook/bearing/grease'
import { contamination, equivalentLoad, fatigueLimit, minimumLoad } from '@shaftbook/bearing/life-inputs'
import { ratingLife } from '@shaftbook/bearing/rating-life'
import { viscosityAt, viscosityRatio } from '@shaftbook/bearing/viscosity'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, optional, quantity } from './field.ts'
import { figure, maybe, word } from './figure.ts'

const viscosity = (title: string) => quantity(title, 'mm²/s', 2, 100_000)
const ratingKn = quantity('Dynamic rating C', 'kN', 0.1, 100_000)

const oil = calculation({
  name: 'oil-viscosity',
  group: 'life',
  title: 'Viscosity at a temperature',
  words: 'log log (ν + 0.7) is a straight line over log T, through two points of the oil’s sheet (ASTM D341).',
  input: {
    celsius: quantity('At', '°C', -30, 200),
    oneC: quantity('First temperature', '°C', -30, 200, 'Usually 40 °C'),
    oneMm2PerS: viscosity('Viscosity at the first'),
    otherC: quantity('Second temperature', '°C', -30, 200, 'Usually 100 °C'),
    otherMm2PerS: viscosity('Viscosity at the second'),
  },
  result: { mm2PerS: figure('Viscosity', 'mm²/s') },
  fieldOf: { viscosity: 'celsius', mm2PerS: 'oneMm2PerS' },
  run: ({ celsius, oneC, oneMm2PerS, otherC, otherMm2PerS }) =>
    viscosityAt(celsius, { celsius: oneC, mm2PerS: oneMm2PerS }, { celsius: otherC, mm2PerS: otherMm2PerS }),
})

const kappa = calculation({
  name: 'viscosity-ratio',
  group: 'life',
  title: 'Viscosity ratio κ',
  words:
    'κ = ν / ν1; ν1 = 45 000 · n^−0.83 · dm^−0.5 below 1000 rev/min, 4500 · n^−0.5 · dm^−0.5 above. Wanted: 1.5 to 4.',
  input: {
    mm2PerS: quantity('Viscosity at running temperature', 'mm²/s', 0.2, 1_000_000),
    speedRpm: field.speedRpm,
    boreMm: field.boreMm,
    outsideDiameterMm: field.outsideDiameterMm,
  },
  result: {
    kappa: figure('κ', ''),
    requiredMm2PerS: figure('ν1 that is needed', 'mm²/s'),
    verdict: word('Verdict', { good: 'good', thin: 'thin', 'too-thin': 'too thin', thick: 'thicker than needed' }),
  },
  run: ({ mm2PerS, speedRpm, boreMm, outsideDiameterMm }) =>
    viscosityRatio(mm2PerS, speedRpm, meanDiameterMm(boreMm, outsideDiameterMm)),
})

const load = calculation({
  name: 'equivalent-load',
  group: 'life',
  title: 'Equivalent load',
  words: 'P = X · Fr + Y · Fa with X and Y of the maker’s sheet.',
  input: {
    radialKn: quantity('Radial load Fr', 'kN', 0, 100_000),
    axialKn: quantity('Axial load Fa', 'kN', 0, 100_000),
    x: quantity('X', '', 0, 10),
    y: quantity('Y', '', 0, 10),
  },
  result: { equivalentKn: figure('Equivalent load P', 'kN') },
  run: ({ radialKn, axialKn, x, y }) => equivalentLoad(radialKn, axialKn, { x, y }),
})

const dirt = calculation({
  name: 'contamination',
  group: 'life',
  title: 'Contamination factor',
  words: 'eC by the level of cleanliness and the mean diameter (ISO 281).',
  input: {
    level: choice('Cleanliness', {
      extreme_cleanliness: 'extreme cleanliness',
      high_cleanliness: 'high cleanliness',
      normal_cleanliness: 'normal cleanliness',
      slight_contamination: 'slight contamination',
      typical_contamination: 'typical contamination',
      severe_contamination: 'severe contamination',
      very_severe_contamination: 'very severe contamination',
    }),
    meanDiameterMm: field.meanDiameterMm,
  },
  result: { lowest: figure('eC from', ''), highest: figure('eC to', '') },
  run: ({ level, meanDiameterMm }) => contamination(level, meanDiameterMm),
})

const fatigue = calculation({
  name: 'fatigue-limit',
  group: 'life',
  title: 'Fatigue load limit',
  words: 'Roller bearings: Cu = C0 / 8.2 to dm 100 mm, times (100 / dm)^0.3 above.',
  input: {
    staticRatingKn: quantity('Static rating C0', 'kN', 0.1, 200_000),
    meanDiameterMm: field.meanDiameterMm,
  },
  result: { fatigueLimitKn: figure('Fatigue load limit Cu', 'kN') },
  run: ({ staticRatingKn, meanDiameterMm }) => fatigueLimit(staticRatingKn, meanDiameterMm),
})

const lightLoad = calculation({
  name: 'minimum-load',
  group: 'life',
  title: 'Least load against skidding',
  words: 'Rule of thumb: 0.02 · C for rollers, 0.01 · C for balls.',
  input: {
    ratingKn,
    element: field.rollingElement,
    loadKn: optional(quantity('Load', 'kN', 0, 100_000)),
  },
  result: {
    minimumKn: figure('Least load', 'kN'),
    verdict: word('Verdict', { enough: 'enough', 'too-light': 'too light', 'not-judged': 'not judged' }),
  },
  run: ({ ratingKn, element, loadKn }) => minimumLoad(ratingKn, element, loadKn ?? null),
})

const life = calculation({
  name: 'rating-life',
  group: 'life',
  title: 'Rating life',
  words:
    'L10 = (C/P)^(10/3) million turns for rollers, (C/P)³ for balls; Lnm = a1 · aISO · L10, aISO by κ and eC · Cu/P (ISO 281:2007).',
  input: {
    element: field.rollingElement,
    ratingKn,
    staticRatingKn: quantity('Static rating C0', 'kN', 0.1, 200_000),
    loadKn: quantity('Equivalent load P', 'kN', 0.001, 100_000),
    speedRpm: field.speedRpm,
    meanDiameterMm: field.meanDiameterMm,
    kappa: quantity('Viscosity ratio κ', '', 0.1, 10_000),
    contamination: quantity('Contamination factor eC', '', 0, 1),
    reliability: optional(
      choice('Reliability', { '90': '90 %', '95': '95 %', '96': '96 %', '97': '97 %', '98': '98 %', '99': '99 %' }),
    ),
    fatigueLimitKn: optional(
      quantity('Fatigue load limit Cu', 'kN', 0.001, 100_000, 'From the maker; for rollers estimated from C0'),
    ),
  },
  result: {
    basicHours: figure('L10', 'h'),
    modifiedHours: figure('Modified life', 'h'),
    basicMillions: figure('L10 in turns', 'million turns'),
    aIso: figure('aISO', ''),
    a1: figure('a1', ''),
    loadOverRating: figure('P over C', ''),
    reliabilityPercent: maybe(figure('Reliability', '%')),
  },
  run: ({ reliability, ...input }) => {
    const reliabilityPercent = Number(reliability ?? '90')
    return { ...ratingLife({ ...input, reliabilityPercent }), reliabilityPercent }
  },
})

export const lifeCalculations = [oil, kappa, load, dirt, fatigue, lightLoad, life]
