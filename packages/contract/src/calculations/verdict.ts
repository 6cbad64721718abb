import { chooseBand, residualMinimum, type BandQuery } from '@shaftbook/bearing/band'
import { InputError } from '@shaftbook/bearing/input-error'
import { judgeMount, type MountJudgement } from '@shaftbook/bearing/mount'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, optional, quantity } from './field.ts'
import { figure, maybe, saying, whether, word } from './figure.ts'

const own = 'The position’s own; left empty, the guide’s is taken'

const verdict = calculation({
  name: 'clearance-verdict',
  group: 'clearance',
  title: 'Verdict of a mount',
  words:
    'Reduction = bench less mounted clearance, against its band; mounted clearance against the residual minimum; each by its uncertainty (ISO 14253-1).',
  input: {
    boreMm: field.boreMm,
    taper: optional(field.taper),
    clearanceClass: field.clearanceClass,
    beforeRowAUm: field.rowReadings('Before mounting, row A'),
    beforeRowBUm: field.rowReadings('Before mounting, row B'),
    afterRowAUm: field.rowReadings('After mounting, row A'),
    afterRowBUm: field.rowReadings('After mounting, row B'),
    driveUpMm: optional(quantity('Drive-up from the zero point', 'mm', 0, 50)),
    bandMinUm: optional(quantity('Band from', 'µm', 1, 2000, own)),
    bandMaxUm: optional(quantity('Band to', 'µm', 1, 2000, own)),
    residualMinUm: optional(field.clearance('Residual minimum', own)),
    reductionRule: optional(choice('Reduction is accepted when', field.acceptance)),
    residualRule: optional(choice('Residual is accepted when', field.acceptance)),
    guardFactor: optional(quantity('Factor of U', '', 0, 4, '2 by ISO 14253-1, 1.65 one-sided')),
  },
  result: {
    verdict: maybe(field.bandVerdict),
    residual: maybe(
      word('Residual', {
        enough: 'enough',
        'too-small': 'too small',
        'not-proven': 'not proven',
        'no-minimum': 'no minimum is known',
      }),
    ),
    reductionUm: maybe(figure('Reduction', 'µm')),
    bandMinUm: maybe(figure('Band from', 'µm')),
    bandMaxUm: maybe(figure('Band to', 'µm')),
    expandedReductionUm: maybe(figure('U of the reduction', 'µm')),
    proven: maybe(whether('The verdict is proven')),
    gaugeCannotProveBand: maybe(whether('The band is narrower than 2 U')),
    benchUm: maybe(figure('Bench clearance', 'µm')),
    mountedUm: maybe(figure('Mounted clearance', 'µm')),
    residualMinUm: maybe(figure('Residual minimum', 'µm')),
    expandedMountedUm: maybe(figure('U of the mounted clearance', 'µm')),
    classVerdict: maybe(
      word('Bench clearance against its class', {
        inside: 'inside',
        under: 'under',
        over: 'over',
        'not-proven': 'not proven',
        'no-row': 'no row',
      }),
    ),
    ratioVerdict: maybe(
      word('Drive-up against reduction', {
        plausible: 'plausible',
        'too-low': 'too low',
        'too-high': 'too high',
        'not-done': 'not compared',
      }),
    ),
    ratio: maybe(figure('Drive-up over reduction', '')),
    formulaVersion: maybe(saying('Version of the formulas')),
  },
  fieldOf: { band: 'bandMaxUm' },
  run: (input) => {
    const { boreMm, clearanceClass, bandMinUm, bandMaxUm, reductionRule, residualRule, guardFactor } = input
    if ((typeof bandMinUm === 'number') !== (typeof bandMaxUm === 'number'))
      throw new InputError('conflict', 'bandMaxUm', 'A band of your own needs both its ends.')
    const ownBand =
      typeof bandMinUm === 'number' && typeof bandMaxUm === 'number' ? { minUm: bandMinUm, maxUm: bandMaxUm } : null
    const taper = input.taper ?? null
    const query: BandQuery = { boreMm, taper, clearanceClass, ownBand, ownResidualMinUm: input.residualMinUm ?? null }
    const [band, least] = [chooseBand(query), residualMinimum(query)]
    const judged = judgeMount({
      bearing: { boreMm, taper, clearanceClass },
      before: [...inRow('A', input.beforeRowAUm), ...inRow('B', input.beforeRowBUm)],
      after: [...inRow('A', input.afterRowAUm), ...inRow('B', input.afterRowBUm)],
      band: band.found ? band : null,
      residualMinimum: least.found ? least : null,
      driveUpMm: input.driveUpMm ?? null,
      settings: {
        ...(reductionRule && { reductionRule }),
        ...(residualRule && { residualRule }),
        ...(typeof guardFactor === 'number' && { guardFactor }),
      },
    })
    return judged.kind === 'judged' ? shown(judged) : judged
  },
})

function shown(judged: MountJudgement) {
  const { reduction, residual, ratio, classCheck } = judged
  const minimum = residual.verdict === 'no-minimum' ? null : residual
  return {
    verdict: reduction.verdict,
    residual: residual.verdict,
    reductionUm: reduction.reductionUm,
    bandMinUm: reduction.minUm,
    bandMaxUm: reduction.maxUm,
    expandedReductionUm: reduction.expandedUm,
    proven: reduction.proven,
    gaugeCannotProveBand: reduction.gaugeCannotProveBand,
    benchUm: judged.bench.meanUm,
    mountedUm: judged.mounted.meanUm,
    residualMinUm: minimum?.minUm,
    expandedMountedUm: minimum?.expandedUm,
    classVerdict: classCheck.verdict,
    ratioVerdict: ratio.verdict,
    ratio: ratio.ratio,
    formulaVersion: judged.formulaVersion,
    source: judged.source,
    rule: judged.rule,
    cautions: judged.cautions,
  }
}

function inRow(row: 'A' | 'B', readings: readonly number[]): { row: 'A' | 'B'; um: number }[] {
  return readings.map((um) => ({ row, um }))
}

export const verdictCalculations = [verdict]
