import { z } from 'zod'
import { Micrometres } from './common.ts'

export const Verdict = z.enum(['inside', 'under', 'over', 'not-proven'])
export type Verdict = z.infer<typeof Verdict>
export const ResidualVerdict = z.enum(['enough', 'too-small', 'not-proven', 'no-minimum'])
export type ResidualVerdict = z.infer<typeof ResidualVerdict>
export const Band = z.object({
  minUm: Micrometres,
  maxUm: Micrometres,
  source: z.object({
    kind: z.enum(['position', 'maker-chart', 'generic-guide']),
    title: z.string(),
    edition: z.string().nullable(),
    page: z.string().nullable().default(null).meta({ description: "The page of the maker's document" }),
    row: z.string().nullable(),
    certainty: z.string().nullable(),
  }),
})
export type Band = z.infer<typeof Band>

/** The lengths that a check compares, so that a screen can say them in its reader's unit. */
export const CheckFigures = z.object({
  valueUm: Micrometres,
  minUm: Micrometres.nullable(),
  maxUm: Micrometres.nullable(),
  expandedUncertaintyUm: z.number().nullable(),
  source: z.string().nullable(),
})
export type CheckFigures = z.infer<typeof CheckFigures>

export const Check = z.object({
  rule: z.string(),
  name: z.string(),
  outcome: z.enum(['pass', 'fail', 'not-proven', 'warning', 'not-done']),
  sentence: z.string().meta({ description: 'The check in words, lengths in µm' }),
  figures: CheckFigures.nullable(),
})
export type Check = z.infer<typeof Check>

/** What the formulas say of the readings, with everything that they went by. */
export const Judgement = z
  .object({
    verdict: Verdict.nullable(),
    residual: ResidualVerdict.nullable(),
    benchMeanUm: Micrometres.nullable(),
    mountedMeanUm: Micrometres.nullable(),
    reductionUm: Micrometres.nullable(),
    expandedUncertaintyUm: z.number().nullable(),
    band: Band.nullable(),
    residualMinUm: Micrometres.nullable(),
    checks: z.array(Check),
    cautions: z.array(z.string()),
    formulaVersion: z.string(),
  })
  .meta({ id: 'Judgement' })
export type Judgement = z.infer<typeof Judgement>
