import type { MountJudgement } from '@shaftbook/bearing/mount'
import type { BearingReading } from '@shaftbook/bearing/readings'
import { formatLength } from '@shaftbook/bearing/units'
import type { Check } from '@shaftbook/contract/mounts'

const names = {
  'R-CL2': 'Bench clearance against its class',
  'R-RED': 'Reduction against its band',
  'R-RES': 'Mounted clearance against its minimum',
  'R-RATIO': 'Drive-up against reduction',
} as const

const notYet = 'Not done: readings or their limits are missing.'

/** The checks that need more than one set of readings, before they can be done. */
export const notDoneChecks: readonly Check[] = Object.entries(names).map(([rule, name]) => ({
  rule,
  name,
  outcome: 'not-done',
  sentence: notYet,
}))

/** Whether the two rows of each set agree. R-ROW: a warning, never a failure. */
export function rowChecks(bench: BearingReading | null, mounted: BearingReading | null): Check[] {
  return [rowCheck('Rows before mounting', bench), rowCheck('Rows after mounting', mounted)]
}

function rowCheck(name: string, reading: BearingReading | null): Check {
  if (!reading)
    return { rule: 'R-ROW', name, outcome: 'not-done', sentence: 'Not done: readings in both rows are missing.' }
  const { rowDifferenceUm, rowDifferenceLimitUm, rowsAgree } = reading
  const sentence = `The rows differ by ${um(rowDifferenceUm)}; up to ${um(rowDifferenceLimitUm)} agrees.`
  return { rule: 'R-ROW', name, outcome: rowsAgree ? 'pass' : 'warning', sentence }
}

/** Every check of a mount whose readings are complete. */
export function judgedChecks(judgement: MountJudgement): Check[] {
  return [
    ...rowChecks(judgement.bench, judgement.mounted),
    classCheck(judgement),
    reductionCheck(judgement),
    residualCheck(judgement),
    ratioCheck(judgement),
  ]
}

const bandOutcomes = { inside: 'pass', under: 'fail', over: 'fail', 'not-proven': 'not-proven' } as const

function classCheck({ classCheck: found, bench }: MountJudgement): Check {
  if (found.verdict === 'no-row') return check('R-CL2', 'not-done', found.reason)
  const { minUm, maxUm } = found.range
  return check('R-CL2', bandOutcomes[found.verdict], `${um(bench.meanUm)} against ${um(minUm)} to ${um(maxUm)}.`)
}

function reductionCheck({ reduction }: MountJudgement): Check {
  const { reductionUm, minUm, maxUm, expandedUm, source } = reduction
  const from = [source.title, source.edition, source.row].filter((part) => part !== null).join(', ')
  const sentence = `${um(reductionUm)} against ${um(minUm)} to ${um(maxUm)} (${from}); U = ${um(expandedUm)}.`
  return check('R-RED', bandOutcomes[reduction.verdict], sentence)
}

function residualCheck({ residual }: MountJudgement): Check {
  if (residual.verdict === 'no-minimum') return check('R-RES', 'not-done', residual.cautions[0] ?? notYet)
  const outcome = ({ enough: 'pass', 'too-small': 'fail', 'not-proven': 'not-proven' } as const)[residual.verdict]
  const sentence = `${um(residual.mountedUm)} against at least ${um(residual.minUm)}; U = ${um(residual.expandedUm)}.`
  return check('R-RES', outcome, sentence)
}

function ratioCheck({ ratio }: MountJudgement): Check {
  if (ratio.ratio === null)
    return check('R-RATIO', 'not-done', ratio.cautions[0] ?? 'Not done: no drive-up was entered.')
  const outcome = ratio.verdict === 'plausible' ? 'pass' : 'warning'
  return check(
    'R-RATIO',
    outcome,
    `Drive-up over reduction is ${ratio.ratio}; ${ratio.lowest} to ${ratio.highest} is plausible.`,
  )
}

function check(rule: keyof typeof names, outcome: Check['outcome'], sentence: string): Check {
  return { rule, name: names[rule], outcome, sentence }
}

/** Micrometres with a decimal only where there is one. */
function um(value: number): string {
  return formatLength(value, 'um', { decimals: Number.isInteger(value) ? 0 : 1 })
}
