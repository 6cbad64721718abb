import { hotFit, reductionByFit, usualSeat } from '@shaftbook/bearing/fit'
import { checkShaft, inchOrMetric } from '@shaftbook/bearing/shaft'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, optional, quantities, quantity, yesNo } from './field.ts'
import { figure, maybe, saying, word } from './figure.ts'

const shaftCheck = calculation({
  name: 'shaft-check',
  group: 'seats',
  title: 'Shaft against h9 and h10',
  words:
    'Readings less nominal diameter against IT9 and IT10 of ISO 286; what a small shaft eats is its deviation · 12 (or 30).',
  input: {
    nominalMm: quantity('Nominal diameter', 'mm', 10, 500),
    readingsMm: quantities('Readings', 'mm', 5, 510, 24, 'Three planes, two directions'),
    taper: field.taper,
  },
  result: {
    verdict: maybe(
      word('Verdict', {
        'inside-h9': 'inside h9',
        'inside-h10': 'below h9, inside h10',
        'below-h10': 'below h10: engineer',
        'above-nominal': 'above nominal: stop',
      }),
    ),
    largestUm: maybe(figure('Largest less nominal', 'µm')),
    smallestUm: maybe(figure('Smallest less nominal', 'µm')),
    spreadUm: maybe(figure('Spread of the readings', 'µm')),
    travelLostMm: maybe(figure('Travel before any reduction, at most', 'mm')),
  },
  run: ({ nominalMm, readingsMm, taper }) => checkShaft(nominalMm, readingsMm, taper),
})

const inch = calculation({
  name: 'inch-or-metric',
  group: 'seats',
  title: 'Inch or metric',
  words: 'A reading within 0.5 mm of an inch size and of a metric one is asked, never guessed.',
  input: {
    shaftMm: quantity('Shaft', 'mm', 5, 1000),
    answer: optional(choice('What the position says', { metric: 'metric', inch: 'inch' })),
  },
  result: {
    system: maybe(word('System', { metric: 'metric', inch: 'inch' })),
    inchShaft: maybe(saying('Inch size')),
    inchShaftMm: maybe(figure('which is', 'mm', 5)),
    metricShaftMm: maybe(figure('Metric size', 'mm', 5)),
  },
  run: ({ shaftMm, answer }) => inchOrMetric(shaftMm, answer ?? null),
})

const fit = calculation({
  name: 'fit-reduction',
  group: 'seats',
  title: 'Reduction by an interference fit',
  words: 'Cylindrical bore: reduction = (interference − smoothing) · d/F, less for a hollow shaft.',
  input: {
    interferenceUm: quantity('Interference as measured', 'µm', 0, 1000, 'Shaft less bore'),
    boreMm: field.boreMm,
    outsideDiameterMm: field.outsideDiameterMm,
    smoothingUm: optional(quantity('Smoothing', 'µm', 0, 200, '8 µm where it is left empty')),
    shaftBoreMm: optional(field.shaftBoreMm),
    innerRacewayMm: optional(field.innerRacewayMm),
  },
  result: {
    reductionUm: figure('Reduction', 'µm'),
    effectiveUm: figure('Interference after smoothing', 'µm'),
    share: figure('Part that reaches the raceway', ''),
  },
  run: (input) => reductionByFit(input),
})

const heating = calculation({
  name: 'hot-fit',
  group: 'seats',
  title: 'Heating for a hot fit',
  words: 'ΔT above the shaft = (interference + 0.05 mm) / (α · d); about 120 °C at most, 80 °C for sealed bearings.',
  input: {
    interferenceUm: quantity('Interference', 'µm', 0, 1000),
    boreMm: field.boreMm,
    ambientC: optional(quantity('Shaft and workshop', '°C', -40, 60, '20 °C where it is left empty')),
    sealed: optional(yesNo('Sealed or greased bearing')),
  },
  result: {
    ringC: figure('Ring', '°C'),
    heatingK: figure('Heating above the shaft', 'K'),
    limitC: figure('Limit', '°C'),
    verdict: word('Verdict', { 'within-limit': 'within the limit', 'too-hot': 'too hot' }),
  },
  run: (input) => hotFit(input),
})

const seat = calculation({
  name: 'usual-seat',
  group: 'seats',
  title: 'Usual seat of a cylindrical bore',
  words:
    'Shaft k5 to 40 mm, m5 to 65, m6 to 100, n6 to 140, p6 to 280; housing H7, G7 when the shaft runs hot, N7 or P7 when the load turns.',
  input: {
    boreMm: quantity('Bore d', 'mm', 10, 2000),
    shaftRunsHot: optional(yesNo('The shaft runs hot')),
    outerRingTurns: optional(yesNo('The load turns on the outer ring')),
  },
  result: { shaftClass: maybe(saying('Shaft')), housingClass: maybe(saying('Housing')) },
  run: ({ boreMm, ...place }) => usualSeat(boreMm, place),
})

export const seatCalculations = [shaftCheck, inch, fit, heating, seat]
