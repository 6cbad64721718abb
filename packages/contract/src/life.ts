import { z } from 'zod'
import { Id, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

const Hours = z.number().min(0)

/** What the removals and running bearings of a site add up to. Counted, not estimated: no statistics. */
export const LifeSummary = z
  .object({
    /** Stays of bearings by how they stand: ended by failure, ended without, lost track of, still running (R-CENS). */
    failures: z.int(),
    notFailed: z.int(),
    lost: z.int(),
    running: z.int(),
    hours: z.object({
      metered: Hours.meta({ description: 'Run hours of ended stays, by meters' }),
      estimated: Hours.meta({ description: 'Run hours of ended stays, estimated from average use' }),
      running: Hours.meta({ description: 'Run hours of bearings that still run, up to the last meter reading' }),
      staysWithout: z.int().meta({ description: 'Stays whose hours are not known; they count with no hours' }),
    }),
    byMode: z.array(
      z.object({ modeClause: z.string().nullable(), modeTerm: z.string().nullable(), failures: z.int() }),
    ),
    worst: z
      .array(
        z.object({
          positionId: Id,
          tag: z.string(),
          machineName: z.string(),
          failures: z.int(),
          stays: z.int(),
          runHours: Hours,
          staysWithoutHours: z.int(),
        }),
      )
      .meta({ description: 'Positions that failed twice or more, the most failures first: 20 at most' }),
  })
  .meta({ id: 'LifeSummary' })
export type LifeSummary = z.infer<typeof LifeSummary>

export const readLifeSummary = endpoint({
  name: 'read-life-summary',
  method: 'GET',
  path: sitePath('life-summary'),
  access: everyone,
  summary: 'Failures, other endings and hours of the site, failures by mode, and the positions that failed most',
  params: siteParams,
  replies: { 200: LifeSummary },
})
