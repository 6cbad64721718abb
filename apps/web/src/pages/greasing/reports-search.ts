import { complianceGroupings } from '@shaftbook/contract/greasing-reports'
import { z } from 'zod'
import { forecastPeriods } from '../../features/greasing-reports/forecast-words.ts'
import { compliancePeriods } from '../../features/greasing-reports/compliance-words.ts'

/** What the addresses of the reports say. A part that is not understood counts as not given. */
export const aheadSearch = z.object({
  weeks: z.coerce.string().pipe(z.enum(forecastPeriods)).optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
})
export type AheadSearch = z.output<typeof aheadSearch>

export const complianceSearch = z.object({
  months: z.coerce.string().pipe(z.enum(compliancePeriods)).optional().catch(undefined),
  by: z.enum(complianceGroupings).optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  round: z.uuid().optional().catch(undefined),
  person: z.uuid().optional().catch(undefined),
  position: z.uuid().optional().catch(undefined),
})
export type ComplianceSearch = z.output<typeof complianceSearch>
