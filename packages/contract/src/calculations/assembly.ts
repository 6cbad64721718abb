import { newtonMetresPerPoundFoot, torqueCounts, makerTorque } from '@shaftbook/bearing/bolts'
import { capBolts } from '@shaftbook/bearing/cap-bolts'
import { ringFrequencies } from '@shaftbook/bearing/ring-frequencies'
import { formula } from '@shaftbook/bearing/source'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, count, optional, quantity, text } from './field.ts'
import { figure, figures, maybe, whether } from './figure.ts'

const bolts = calculation({
  name: 'cap-bolts',
  group: 'assembly',
  title: 'Torque of cap bolts',
  words: 'T = K · F · d with the preload F = 0.75 · proof stress · stress area. The housing maker’s figure wins.',
  input: {
    size: text('Size', 'Such as M16 or 5/8-11'),
    propertyClass: text('Class', 'Such as 8.8, or the grade of an inch bolt'),
    state: choice('Thread', {
      dry: 'dry, as received (K 0.20)',
      oiled: 'light oil (K 0.16)',
      moly: 'molybdenum paste (K 0.12)',
    }),
    bolts: optional(count('Bolts of the cap', '', 2, 24, 'For the order of tightening')),
    makerNm: optional(quantity('The housing maker’s figure', 'N·m', 1, 20_000)),
  },
  result: {
    torqueNm: maybe(figure('Torque', 'N·m')),
    torqueLbFt: maybe(figure('Torque in pound-feet', 'lb·ft')),
    stepsNm: maybe(figures('In steps', 'N·m')),
    order: maybe(figures('Order of the bolts, numbered round the circle', '')),
    fromNm: maybe(figure('Counts from', 'N·m')),
    toNm: maybe(figure('Counts to', 'N·m')),
    nutFactor: maybe(figure('K', '')),
    preloadKn: maybe(figure('Preload F', 'kN')),
    formulaNm: maybe(figure('By the formula', 'N·m')),
  },
  run: (input) => capBolts(input),
})

const torque = calculation({
  name: 'torque-check',
  group: 'assembly',
  title: 'Torque as recorded',
  words: 'Within ±5 % of the target; 1 lb·ft = 1.35582 N·m.',
  input: {
    recorded: quantity('Recorded', '', 0, 20_000),
    unit: choice('Unit', { 'N·m': 'N·m', 'lb·ft': 'lb·ft' }),
    targetNm: quantity('Target', 'N·m', 1, 20_000),
  },
  result: {
    counts: whether('Counts'),
    recordedNm: figure('Recorded', 'N·m', 4),
    recordedLbFt: figure('Recorded in pound-feet', 'lb·ft', 4),
    fromNm: figure('Counts from', 'N·m', 4),
    toNm: figure('Counts to', 'N·m', 4),
  },
  fieldOf: { recordedNm: 'recorded' },
  run: ({ recorded, unit, targetNm }) => {
    const recordedNm = unit === 'N·m' ? recorded : recorded * newtonMetresPerPoundFoot
    const { fromNm, toNm, rule } = makerTorque(targetNm, 'the target')
    const counts = torqueCounts(recordedNm, { fromNm, toNm })
    const recordedLbFt = recordedNm / newtonMetresPerPoundFoot
    const cautions = counts ? [] : ['Outside ±5 % of the target: tighten again with a checked wrench.']
    return { counts, recordedNm, recordedLbFt, fromNm, toNm, source: formula('±5 % of the target'), rule, cautions }
  },
})

const frequencies = calculation({
  name: 'ring-frequencies',
  group: 'assembly',
  title: 'Ring frequencies',
  words:
    'Rolling without slip: outer ring z/2 · n · (1 − d/D · cos α), inner ring with plus; cage n/2 · (1 − d/D · cos α).',
  input: {
    elements: count('Rolling elements in a row', '', 3, 200),
    elementDiameterMm: quantity('Their diameter', 'mm', 0.5, 1000),
    pitchDiameterMm: quantity('Pitch diameter', 'mm', 3, 3000),
    contactAngleDeg: quantity('Contact angle', '°', 0, 60),
    speedRpm: field.speedRpm,
  },
  result: {
    outerRingHz: figure('Outer ring', 'Hz', 4),
    innerRingHz: figure('Inner ring', 'Hz', 4),
    cageHz: figure('Cage', 'Hz', 4),
    rollerPassHz: figure('A spot on a roller', 'Hz', 4),
    rollerSpinHz: figure('Roller spin', 'Hz', 4),
  },
  run: (input) => ringFrequencies(input),
})

export const assemblyCalculations = [bolts, torque, frequencies]
