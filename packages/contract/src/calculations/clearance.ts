import { chooseBand, halfOfBand, residualMinimum } from '@shaftbook/bearing/band'
import { checkClass, clearanceRange } from '@shaftbook/bearing/clearance'
import { operatingClearance } from '@shaftbook/bearing/operating-clearance'
import { bearingReading, saggingRingReading } from '@shaftbook/bearing/readings'
import { mountUncertainty, defaultBudget } from '@shaftbook/bearing/uncertainty'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, count, optional, quantity, text } from './field.ts'
import { figure, maybe, rows, saying, sayings, whether, word } from './figure.ts'

const clearanceClass = calculation({
  name: 'clearance-class',
  group: 'clearance',
  title: 'Clearance of a class',
  words: 'The row of ISO 5753-1 with over < d ≤ incl; a K bearing uses the tapered table.',
  input: { boreMm: field.boreMm, boreKind: field.boreKind, clearanceClass: field.clearanceClass },
  result: {
    minUm: maybe(figure('From', 'µm')),
    maxUm: maybe(figure('To', 'µm')),
    classes: maybe(
      rows('All classes', { name: saying('Class'), minUm: figure('From', 'µm'), maxUm: figure('To', 'µm') }),
    ),
  },
  run: ({ boreMm, boreKind, clearanceClass }) => {
    const found = clearanceRange(boreMm, boreKind, clearanceClass)
    if (!found.found) return found
    const classes = Object.entries(found.classes).map(([name, range]) => ({ name, ...range }))
    return { ...found, ...found.range, classes }
  },
})

const classCheck = calculation({
  name: 'class-check',
  group: 'clearance',
  title: 'Bench clearance against its class',
  words: 'The mean of the readings before mounting against the range of the class on the box, by its uncertainty.',
  input: {
    benchUm: field.clearance('Bench clearance'),
    boreMm: field.boreMm,
    boreKind: field.boreKind,
    clearanceClass: field.clearanceClass,
    series: optional(text('Series', 'Such as 222; left empty, a spherical roller bearing is meant')),
    expandedUm: optional(quantity('Expanded uncertainty U', 'µm', 0, 500)),
    acceptance: optional(choice('Accepted when', field.acceptance)),
  },
  result: {
    verdict: maybe(field.bandVerdict),
    minUm: maybe(figure('Class from', 'µm')),
    maxUm: maybe(figure('to', 'µm')),
    readsLike: maybe(sayings('Reads like')),
  },
  run: ({ benchUm, expandedUm, acceptance, series, ...place }) => {
    const bearing = {
      boreMm: place.boreMm,
      bore: place.boreKind,
      clearanceClass: place.clearanceClass,
      series: series ?? null,
    }
    const check = checkClass(benchUm, bearing, expandedUm ?? 0, acceptance ?? 'simple')
    if (check.verdict === 'no-row') return { found: false, ...check }
    return { ...check, ...check.range }
  },
})

const rowReading = calculation({
  name: 'row-readings',
  group: 'clearance',
  title: 'Reading of both rows',
  words:
    'Mean of the two row means, so that each row weighs the same; the rows agree within 10 µm or 15 % of the mean.',
  input: { rowAUm: field.rowReadings('Readings in row A'), rowBUm: field.rowReadings('Readings in row B') },
  result: {
    meanUm: maybe(figure('Clearance', 'µm')),
    rowAMeanUm: maybe(figure('Mean of row A', 'µm')),
    rowBMeanUm: maybe(figure('Mean of row B', 'µm')),
    differenceUm: maybe(figure('Difference of the rows', 'µm')),
    limitUm: maybe(figure('Difference that agrees, at most', 'µm')),
    rowsAgree: maybe(whether('The rows agree')),
  },
  run: ({ rowAUm, rowBUm }) => {
    const read = bearingReading([...inRow('A', rowAUm), ...inRow('B', rowBUm)])
    if (read.kind === 'refused') return read
    const { meanUm, rowMeansUm, rowDifferenceUm, rowDifferenceLimitUm, rowsAgree, source, rule, cautions } =
      read.reading
    const means = { meanUm, rowAMeanUm: rowMeansUm.A, rowBMeanUm: rowMeansUm.B }
    return { ...means, differenceUm: rowDifferenceUm, limitUm: rowDifferenceLimitUm, rowsAgree, source, rule, cautions }
  },
})

const saggingRing = calculation({
  name: 'sagging-ring-reading',
  group: 'clearance',
  title: 'Reading of a sagging ring',
  words: '(left + right + bottom) / 2 of the free outer ring, for big bearings (D above 400 mm).',
  input: {
    leftUm: field.clearance('Left, at 9 o’clock'),
    rightUm: field.clearance('Right, at 3 o’clock'),
    bottomUm: field.clearance('Bottom, at 6 o’clock'),
  },
  result: { readingUm: figure('Clearance', 'µm') },
  run: ({ leftUm, rightUm, bottomUm }) => saggingRingReading(leftUm, rightUm, bottomUm),
})

const clearanceBand = calculation({
  name: 'clearance-band',
  group: 'clearance',
  title: 'Band of the reduction',
  words:
    'The row of the generic guide for the bore: reduction, drive-up and residual minimum. A maker’s chart comes before it.',
  input: {
    boreMm: field.boreMm,
    taper: field.taper,
    clearanceClass: field.clearanceClass,
    series: optional(text('Series', 'Such as 222; left empty, a spherical roller bearing is meant')),
    benchUm: optional(field.clearance('Bench clearance', 'To say which half of the band to aim at')),
  },
  result: {
    minUm: maybe(figure('Reduction from', 'µm')),
    maxUm: maybe(figure('to', 'µm')),
    driveUpMinMm: maybe(figure('Drive-up from', 'mm')),
    driveUpMaxMm: maybe(figure('Drive-up to', 'mm')),
    residualMinUm: maybe(figure('Residual minimum', 'µm')),
    half: maybe(word('Aim at', { lower: 'the lower half', upper: 'the upper half', either: 'the middle' })),
    aimMinUm: maybe(figure('Aim from', 'µm')),
    aimMaxUm: maybe(figure('Aim to', 'µm')),
  },
  run: ({ benchUm, ...query }) => {
    const band = chooseBand(query)
    if (!band.found) return band
    const least = residualMinimum(query)
    const range = clearanceRange(query.boreMm, 'tapered', query.clearanceClass)
    const advice = typeof benchUm === 'number' && range.found ? halfOfBand(benchUm, range.range, band) : null
    return {
      minUm: band.minUm,
      maxUm: band.maxUm,
      driveUpMinMm: band.driveUpMm?.min,
      driveUpMaxMm: band.driveUpMm?.max,
      residualMinUm: least.found ? least.minUm : null,
      half: advice?.half,
      aimMinUm: advice?.aimMinUm,
      aimMaxUm: advice?.aimMaxUm,
      source: band.source,
      rule: 'R-RED, R-RES, R-HALF',
      cautions: [...band.cautions, ...(least.found ? [] : [least.reason])],
    }
  },
})

const readingUncertainty = calculation({
  name: 'reading-uncertainty',
  group: 'clearance',
  title: 'Uncertainty of feeler readings',
  words:
    'Blade, step, feel, seating and temperature combined; feel, step and seating shrink with the number of readings.',
  input: {
    rowAReadings: count('Readings in row A', '', 1, 1000),
    rowBReadings: count('Readings in row B', '', 1, 1000),
    bladeUm: optional(quantity('Blades', 'µm', 0, 200, `${defaultBudget.bladeUm} µm where it is left empty`)),
    stepUm: optional(quantity('Step of the stacks', 'µm', 0, 200, `${defaultBudget.stepUm} µm where it is left empty`)),
    feelUm: optional(quantity('Feel of the hand', 'µm', 0, 200, `${defaultBudget.feelUm} µm where it is left empty`)),
    seatingUm: optional(
      quantity('Seating and ovality', 'µm', 0, 200, `${defaultBudget.seatingUm} µm where it is left empty`),
    ),
    temperatureUm: optional(
      quantity('Temperature', 'µm', 0, 200, `${defaultBudget.temperatureUm} µm where it is left empty`),
    ),
    guardFactor: optional(quantity('Factor of U', '', 0, 4, '2 by ISO 14253-1, 1.65 one-sided')),
  },
  result: {
    standardUm: figure('Standard uncertainty of a clearance', 'µm'),
    expandedUm: figure('Expanded uncertainty U of a clearance', 'µm'),
    standardDifferenceUm: figure('Standard uncertainty of a reduction', 'µm'),
    expandedDifferenceUm: figure('Expanded uncertainty U of a reduction', 'µm'),
  },
  run: ({ rowAReadings, rowBReadings, guardFactor, ...given }) => {
    const own = Object.fromEntries(Object.entries(given).filter(([, value]) => typeof value === 'number'))
    const readings = [rowAReadings, rowBReadings]
    const result = mountUncertainty(readings, readings, { ...defaultBudget, ...own }, guardFactor ?? undefined)
    return {
      standardUm: result.benchUm,
      expandedUm: result.expandedBenchUm,
      standardDifferenceUm: result.differenceUm,
      expandedDifferenceUm: result.expandedDifferenceUm,
      source: result.source,
      rule: result.rule,
      cautions: result.cautions,
    }
  },
})

const operating = calculation({
  name: 'operating-clearance',
  group: 'clearance',
  title: 'Clearance in operation',
  words: 'Mounted clearance less α · ΔT · Do, inner ring warmer than the outer one, α = 12·10⁻⁶/K.',
  input: {
    mountedUm: field.clearance('Mounted clearance'),
    boreMm: field.boreMm,
    outsideDiameterMm: field.outsideDiameterMm,
    innerRingC: quantity('Inner ring', '°C', -60, 250),
    outerRingC: quantity('Outer ring', '°C', -60, 250),
    outerRacewayMm: optional(field.outerRacewayMm),
  },
  result: {
    operatingUm: figure('Clearance in operation', 'µm'),
    changeUm: figure('Change', 'µm'),
    verdict: word('Verdict', { left: 'clearance is left', gone: 'no clearance is left' }),
  },
  run: (input) => operatingClearance(input),
})

export const clearanceCalculations = [
  clearanceClass,
  classCheck,
  rowReading,
  saggingRing,
  clearanceBand,
  readingUncertainty,
  operating,
]

function inRow(row: 'A' | 'B', readings: readonly number[]): { row: 'A' | 'B'; um: number }[] {
  return readings.map((um) => ({ row, um }))
}
