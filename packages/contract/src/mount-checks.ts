import type { MountJudgement } from '@shaftbook/bearing/mount'
import type { BearingReading } from '@shaftbook/bearing/readings'
import { formatLength } from '@shaftbook/bearing/units'
import type { Check, CheckFigures } from './judgement.ts'

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
  figures: null,
}))

/** Whether the two rows of each set agree. R-ROW: a warning, never a failure. */
export function rowChecks(bench: BearingReading | null, mounted: BearingReading | null): Check[] {
  return [rowCheck('Rows before mounting', bench), rowCheck('Rows after mounting', mounted)]
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

/** A check as one sentence; `say` writes a length in µm in the unit of whoever reads it. */
export function checkSentence({ rule, sentence, figures }: Check, say: (um: number) => string): string {
  return figures ? figuresSentence(rule, figures, say) : sentence
}

function figuresSentence(rule: string, figures: CheckFigures, say: (um: number) => string): string {
  const { valueUm, minUm, maxUm, expandedUncertaintyUm: expandedUm, source } = figures
  if (rule === 'R-ROW') return `The rows differ by ${say(valueUm)}; up to ${say(maxUm ?? 0)} agrees.`
  const limits = [minUm, maxUm].flatMap((um) => (um === null ? [] : [say(um)])).join(' to ')
  const from = source === null ? '' : ` (${source})`
  const good = expandedUm === null ? '' : `; U = ${say(expandedUm)}`
  return `${say(valueUm)} against ${maxUm === null ? 'at least ' : ''}${limits}${from}${good}.`
}

function rowCheck(name: string, reading: BearingReading | null): Check {
  if (!reading) {
    const sentence = 'Not done: readings in both rows are missing.'
    return { rule: 'R-ROW', name, outcome: 'not-done', sentence, figures: null }
  }
  const { rowDifferenceUm, rowDifferenceLimitUm, rowsAgree } = reading
  const figures = { valueUm: rowDifferenceUm, maxUm: rowDifferenceLimitUm }
  return measured({ rule: 'R-ROW', name, outcome: rowsAgree ? 'pass' : 'warning' }, figures)
}

const bandOutcomes = { inside: 'pass', under: 'fail', over: 'fail', 'not-proven': 'not-proven' } as const

function classCheck({ classCheck: found, bench }: MountJudgement): Check {
  if (found.verdict === 'no-row') return said('R-CL2', 'not-done', found.reason)
  const { minUm, maxUm } = found.range
  return measured(named('R-CL2', bandOutcomes[found.verdict]), { valueUm: bench.meanUm, minUm, maxUm })
}

function reductionCheck({ reduction }: MountJudgement): Check {
  const { reductionUm: valueUm, minUm, maxUm, expandedUm: expandedUncertaintyUm, source: from } = reduction
  const source = [from.title, from.edition, from.row].filter((part) => part !== null).join(', ')
  const figures = { valueUm, minUm, maxUm, expandedUncertaintyUm, source }
  return measured(named('R-RED', bandOutcomes[reduction.verdict]), figures)
}

function residualCheck({ residual }: MountJudgement): Check {
  if (residual.verdict === 'no-minimum') return said('R-RES', 'not-done', residual.cautions[0] ?? notYet)
  const outcome = ({ enough: 'pass', 'too-small': 'fail', 'not-proven': 'not-proven' } as const)[residual.verdict]
  const { mountedUm: valueUm, minUm, expandedUm: expandedUncertaintyUm } = residual
  return measured(named('R-RES', outcome), { valueUm, minUm, expandedUncertaintyUm })
}

function ratioCheck({ ratio: found }: MountJudgement): Check {
  const { ratio, lowest, highest, verdict, cautions } = found
  if (ratio === null) return said('R-RATIO', 'not-done', cautions[0] ?? 'Not done: no drive-up was entered.')
  const sentence = `Drive-up over reduction is ${ratio}; ${lowest} to ${highest} is plausible.`
  return said('R-RATIO', verdict === 'plausible' ? 'pass' : 'warning', sentence)
}

type Named = Pick<Check, 'rule' | 'name' | 'outcome'>

function named(rule: keyof typeof names, outcome: Check['outcome']): Named {
  return { rule, name: names[rule], outcome }
}

function said(rule: keyof typeof names, outcome: Check['outcome'], sentence: string): Check {
  return { ...named(rule, outcome), sentence, figures: null }
}

function measured(check: Named, given: Pick<CheckFigures, 'valueUm'> & Partial<CheckFigures>): Check {
  const figures = { minUm: null, maxUm: null, expandedUncertaintyUm: null, source: null, ...given }
  return { ...check, sentence: figuresSentence(check.rule, figures, micrometres), figures }
}

/** Micrometres with a decimal only where there is one. */
function micrometres(um: number): string {
  return formatLength(um, 'um', { decimals: Number.isInteger(um) ? 0 : 1 })
}
