import { checkChartRow } from '@shaftbook/bearing/chart-row'
import { parseClearance } from '@shaftbook/bearing/clearance-text'
import { goNoGoWindow, stackFor, stackSequence, usualMaxBlades, usualStepUm } from '@shaftbook/bearing/feeler-blades'
import { formula } from '@shaftbook/bearing/source'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, count, optional, quantities, quantity, text } from './field.ts'
import { figure, figures, maybe, rows, saying, word } from './figure.ts'

const bladesUm = quantities('Blades of the set', 'µm', 5, 2000, 40, 'Each blade once')
const maxBlades = optional(count('Blades in a stack, at most', '', 1, 4, `${usualMaxBlades} where it is left empty`))

const stack = calculation({
  name: 'feeler-stack',
  group: 'feeler',
  title: 'Stack for a thickness',
  words: 'The fewest blades of the set whose thicknesses add up to the wanted one, else the nearest below and above.',
  input: { wantedUm: quantity('Wanted thickness', 'µm', 1, 5000), bladesUm, maxBlades },
  result: {
    totalUm: maybe(figure('Stack', 'µm')),
    bladesUm: maybe(figures('Its blades', 'µm')),
    belowUm: maybe(figure('Next below', 'µm')),
    belowBladesUm: maybe(figures('Blades of the next below', 'µm')),
    aboveUm: maybe(figure('Next above', 'µm')),
    aboveBladesUm: maybe(figures('Blades of the next above', 'µm')),
  },
  run: ({ wantedUm, bladesUm, maxBlades }) => {
    const found = stackFor(wantedUm, bladesUm, maxBlades ?? usualMaxBlades)
    if (found.kind === 'stack') return found
    const { nextBelow, nextAbove, sentence, source, rule, cautions } = found
    return {
      belowUm: nextBelow?.totalUm,
      belowBladesUm: nextBelow?.bladesUm,
      aboveUm: nextAbove?.totalUm,
      aboveBladesUm: nextAbove?.bladesUm,
      sentence,
      source,
      rule,
      cautions,
    }
  },
})

const sequence = calculation({
  name: 'feeler-sequence',
  group: 'feeler',
  title: 'Stacks from bench clearance to target',
  words: 'The stacks to try one after the other while driving up, a step apart, down to the mounted clearance wanted.',
  input: {
    benchUm: quantity('Bench clearance', 'µm', 1, 2000),
    targetUm: field.clearance('Mounted clearance wanted'),
    bladesUm,
    stepUm: optional(quantity('Step', 'µm', 0, 500, `${usualStepUm} µm where it is left empty`)),
    maxBlades,
  },
  result: { stacks: rows('Stacks in order', { totalUm: figure('Stack', 'µm'), bladesUm: figures('Blades', 'µm') }) },
  run: ({ benchUm, targetUm, bladesUm, stepUm, maxBlades }) =>
    stackSequence(benchUm, targetUm, bladesUm, {
      stepUm: stepUm ?? usualStepUm,
      maxBlades: maxBlades ?? usualMaxBlades,
    }),
})

const window = calculation({
  name: 'go-no-go',
  group: 'feeler',
  title: 'Window of a go/no-go reading',
  words: 'The clearance lies between the stack that passes with drag and the one that does not; u = width / √12.',
  input: { passesUm: field.clearance('Stack that passes'), stopsUm: field.clearance('Stack that stops') },
  result: {
    fromUm: figure('Clearance from', 'µm'),
    toUm: figure('to', 'µm'),
    middleUm: figure('Middle', 'µm'),
    standardUm: figure('Standard uncertainty of the middle', 'µm'),
  },
  run: ({ passesUm, stopsUm }) => goNoGoWindow(passesUm, stopsUm),
})

const readClearance = calculation({
  name: 'read-clearance',
  group: 'feeler',
  title: 'A clearance as typed',
  words:
    'Comma or point, mm, µm, inch or thou (1 in = 25.4 mm exactly). Below 0 and above 2 mm refused, what is unlikely asked.',
  input: {
    typed: text('As typed', 'Such as 0,125 or 5 thou'),
    unit: choice('Unit where none is typed', { mm: 'mm', um: 'µm', in: 'inch', thou: 'thou' }),
    boreMm: optional(field.boreMm),
  },
  result: {
    valueUm: figure('Clearance', 'µm'),
    suggestions: maybe(rows('Perhaps', { label: saying('As'), valueUm: figure('Clearance', 'µm') })),
  },
  fieldOf: { length: 'typed' },
  run: ({ typed, unit, boreMm }) => {
    const answer = parseClearance(typed, unit, { field: 'typed', ...(typeof boreMm === 'number' && { boreMm }) })
    const asked = answer.kind === 'ask' ? { sentence: answer.sentence, suggestions: answer.suggestions } : {}
    return {
      valueUm: answer.valueUm,
      ...asked,
      source: formula('1 in = 25.4 mm exactly'),
      rule: 'R-UNIT',
      cautions: [],
    }
  },
})

const chartRow = calculation({
  name: 'chart-row-check',
  group: 'feeler',
  title: 'A row of a maker’s chart as typed',
  words:
    'The band lies between 0.25 and 1.2 thousandths of the bore in every known guide; otherwise a unit may be wrong.',
  input: {
    overMm: quantity('Bores over', 'mm', 0, 2000),
    inclMm: quantity('up to', 'mm', 1, 2000),
    reductionMinUm: quantity('Reduction from', 'µm', 0.0001, 2_000_000),
    reductionMaxUm: quantity('Reduction to', 'µm', 0.0001, 2_000_000),
    driveUpMinMm: optional(quantity('Drive-up from', 'mm', 0, 50)),
    driveUpMaxMm: optional(quantity('Drive-up to', 'mm', 0, 50)),
    taper: field.taper,
  },
  result: {
    verdict: word('Verdict', { plausible: 'plausible', ask: 'look again' }),
    perMille: figure('Middle of the band over bore, thousandths', ''),
    suggestions: rows('Perhaps', {
      label: saying('As'),
      minUm: figure('From', 'µm'),
      maxUm: figure('To', 'µm'),
    }),
  },
  fieldOf: { band: 'reductionMaxUm', driveUpMm: 'driveUpMaxMm' },
  run: ({ taper, ...row }) => {
    const check = checkChartRow(row, taper)
    return { ...check, perMille: check.perMille }
  },
})

export const feelerCalculations = [stack, sequence, window, readClearance, chartRow]
