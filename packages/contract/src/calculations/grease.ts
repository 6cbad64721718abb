import { nextGreasing } from '@shaftbook/bearing/due'
import { checkDose, greaseDose, gunStrokes, speedIndex } from '@shaftbook/bearing/grease'
import { changeOver, firstFill } from '@shaftbook/bearing/grease-change'
import { decodeGrease } from '@shaftbook/bearing/grease-code'
import { InputError } from '@shaftbook/bearing/input-error'
import { temperatureWatch } from '@shaftbook/bearing/temperature-watch'
import { thickenerNames } from '@shaftbook/standards/grease-compatibility'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, count, day, optional, quantities, quantity, text, yesNo } from './field.ts'
import { figure, maybe, saying, whether, word } from './figure.ts'

const dose = calculation({
  name: 'grease-dose',
  group: 'grease',
  title: 'Dose to replenish',
  words: '0.005 · D · B grams from the side, 0.002 · D · B grams through groove and holes of the outer ring.',
  input: {
    outsideDiameterMm: field.outsideDiameterMm,
    widthMm: field.widthMm,
    entry: choice('The grease enters', { side: 'from the side', 'outer-ring-groove': 'through groove and holes' }),
  },
  result: { doseG: figure('Dose', 'g') },
  run: ({ outsideDiameterMm, widthMm, entry }) => greaseDose(outsideDiameterMm, widthMm, entry),
})

const strokes = calculation({
  name: 'gun-strokes',
  group: 'grease',
  title: 'Strokes of a grease gun',
  words: 'Dose over the weighed stroke, rounded up to whole strokes.',
  input: {
    doseG: quantity('Dose', 'g', 0, 20_000),
    gramsPerStroke: quantity('One stroke', 'g', 0.1, 10, 'Ten strokes weighed, by ten'),
  },
  result: { strokes: figure('Strokes', ''), deliveredG: figure('They deliver', 'g', 4) },
  run: ({ doseG, gramsPerStroke }) => gunStrokes(doseG, gramsPerStroke),
})

const doseCheck = calculation({
  name: 'dose-check',
  group: 'grease',
  title: 'Dose given against the plan',
  words:
    '70 to 150 % of plan counts; above 150 % is a deviation, above 200 % the outlet has to be open and the temperature watched.',
  input: { givenG: quantity('Given', 'g', 0, 20_000), plannedG: quantity('Planned', 'g', 0.1, 20_000) },
  result: {
    verdict: word('Verdict', {
      'too-little': 'too little',
      counts: 'counts',
      over: 'too much',
      'far-over': 'far too much',
    }),
    ratio: figure('Given over planned', ''),
    counts: whether('Counts for compliance'),
  },
  run: ({ givenG, plannedG }) => checkDose(givenG, plannedG),
})

const watch = calculation({
  name: 'temperature-watch',
  group: 'grease',
  title: 'Temperature after much grease',
  words: 'A rise above 15 K for more than 24 h means that the excess has to come out.',
  input: {
    beforeC: quantity('Before greasing', '°C', -40, 200),
    hours: quantities('Hours after it', 'h', 0, 1000, 50, 'In order, one for each temperature'),
    celsius: quantities('Temperatures', '°C', -40, 250, 50),
  },
  result: {
    verdict: word('Verdict', { settled: 'settled', watch: 'keep watching', 'remove-excess': 'take the excess out' }),
    highestRiseK: figure('Highest rise', 'K'),
    warmHours: figure('Longest time above 15 K', 'h'),
  },
  run: ({ beforeC, hours, celsius }) => {
    if (hours.length !== celsius.length)
      throw new InputError('conflict', 'celsius', 'Give one temperature for each hour.')
    return temperatureWatch(
      beforeC,
      hours.map((hour, index) => ({ hours: hour, celsius: celsius[index] ?? Number.NaN })),
    )
  },
})

const fill = calculation({
  name: 'first-fill',
  group: 'grease',
  title: 'First fill',
  words:
    'All of the bearing’s free space, (π/4) · B · (D² − d²) less its steel (7.8 g/cm³), and a share of the housing’s by speed and dirt.',
  input: {
    boreMm: field.boreMm,
    outsideDiameterMm: field.outsideDiameterMm,
    widthMm: field.widthMm,
    massKg: quantity('Mass of the bearing', 'kg', 0.001, 20_000),
    level: choice('The housing is filled for', {
      normal: 'normal speed: 20 to 40 %',
      'slow-or-dusty': 'slow or dusty: 40 to 60 %',
      'very-slow-and-dirty': 'very slow and dirty: 70 to 80 %',
      'near-speed-limit': 'near the speed limit: 20 to 30 %',
    }),
    housingVolumeCm3: optional(
      quantity('Free volume of the housing', 'cm³', 0, 1_000_000, 'From its maker or a pour test'),
    ),
    densityGCm3: optional(quantity('Density of the grease', 'g/cm³', 0.5, 2.5, '0.9 where it is left empty')),
  },
  result: {
    bearingG: figure('Into the bearing', 'g'),
    bearingVolumeCm3: figure('Its free volume', 'cm³'),
    housingMinG: maybe(figure('Into the housing from', 'g')),
    housingMaxG: maybe(figure('Into the housing to', 'g')),
  },
  run: ({ densityGCm3, ...input }) => {
    const result = firstFill({ ...input, densityGCm3: densityGCm3 ?? 0.9 })
    return { ...result, housingMinG: result.housingG?.min, housingMaxG: result.housingG?.max }
  },
})

const speed = calculation({
  name: 'speed-index',
  group: 'grease',
  title: 'Speed index',
  words: 'n · dm; n · D where the outer ring turns or the load swings. Slow below 50 000, normal to 200 000.',
  input: {
    speedRpm: field.speedRpm,
    boreMm: field.boreMm,
    outsideDiameterMm: field.outsideDiameterMm,
    outerRingTurns: optional(yesNo('The outer ring turns, or the load swings')),
  },
  result: {
    index: figure('Speed index', 'mm/min', 4),
    verdict: word('Verdict', { slow: 'slow', normal: 'normal', 'consult-maker': 'ask the maker' }),
  },
  run: ({ speedRpm, boreMm, outsideDiameterMm, outerRingTurns }) =>
    speedIndex(speedRpm, { boreMm, outsideDiameterMm }, outerRingTurns ?? false),
})

const thickener = { ...thickenerNames, unknown: 'not known' } as const

const change = calculation({
  name: 'grease-change',
  group: 'grease',
  title: 'Change from one grease to another',
  words:
    'Compatible: three doses at a third of the interval. Borderline: the same with a test of the mix. Else strip and clean.',
  input: {
    from: choice('Thickener now', thickener),
    to: choice('Thickener wanted', thickener),
    intervalHours: optional(quantity('Interval', 'h', 1, 200_000)),
  },
  result: {
    verdict: word('Verdict', { flush: 'flush', 'flush-and-test': 'flush and test the mix', strip: 'strip and clean' }),
    flushEveryHours: maybe(figure('Each of three doses after', 'h', 4)),
  },
  run: ({ from, to, intervalHours }) =>
    changeOver(from === 'unknown' ? null : from, to === 'unknown' ? null : to, intervalHours ?? null),
})

const code = calculation({
  name: 'grease-code',
  group: 'grease',
  title: 'What a grease code says',
  words: 'DIN 51502: use, additives, base oil, NLGI grade, highest and lowest temperature, water.',
  input: { code: text('Code', 'Such as KP2K-20') },
  result: {
    use: saying('Use'),
    additive: maybe(saying('Additives')),
    baseOil: saying('Base oil'),
    nlgi: saying('NLGI grade'),
    maxC: saying('Up to, °C'),
    minC: figure('Down to', '°C'),
    water: saying('Water (class by DIN 51807-1)'),
  },
  fieldOf: { 'grease code': 'code' },
  run: ({ code }) => {
    const decoded = decodeGrease(code, 'code')
    return { ...decoded, maxC: String(decoded.maxC) }
  },
})

const next = calculation({
  name: 'next-greasing',
  group: 'grease',
  title: 'Next greasing',
  words:
    'The earlier of last run hours + interval and last date + calendar months; the calendar runs while a machine stands.',
  input: {
    lastDate: day('Last greasing'),
    lastRunHours: optional(quantity('Run hours at it', 'h', 0, 1_000_000)),
    intervalHours: optional(quantity('Interval', 'h', 1, 200_000)),
    calendarMonths: optional(count('Calendar limit', 'months', 1, 240)),
    today: day('Today'),
    runHours: optional(quantity('Run hours today', 'h', 0, 1_000_000)),
    hoursPerDay: optional(quantity('Average run hours', 'h a day', 0, 24)),
  },
  result: {
    state: word('State', {
      'never-greased': 'never greased',
      'not-due': 'not due',
      'due-soon': 'due soon',
      due: 'due',
      overdue: 'overdue',
      missed: 'missed',
    }),
    dueDate: maybe(saying('Due on')),
    dueRunHours: maybe(figure('Due at', 'h', 7)),
    overdueFrom: maybe(saying('Overdue from')),
    estimated: whether('The date is estimated from average hours'),
  },
  fieldOf: { plan: 'intervalHours', 'last.date': 'lastDate', 'usage.runHours': 'runHours' },
  run: ({ lastDate, lastRunHours, intervalHours, calendarMonths, today, runHours, hoursPerDay }) =>
    nextGreasing(
      { intervalHours: intervalHours ?? null, calendarMonths: calendarMonths ?? null },
      { date: lastDate, runHours: lastRunHours ?? null },
      { today, runHours: runHours ?? null, hoursPerDay: hoursPerDay ?? null },
    ),
})

export const greaseCalculations = [dose, strokes, doseCheck, watch, fill, speed, change, code, next]
