import { z } from 'zod'

export const bearingTypesSearch = z.object({
  q: z.string().max(200).optional().catch(undefined),
  sort: z.enum(['designation', '-designation', 'boreMm', '-boreMm']).optional().catch(undefined),
})
export type BearingTypesSearch = z.output<typeof bearingTypesSearch>

/** The place that a new row belongs to. */
export const withinSearch = z.object({ within: z.uuid().optional().catch(undefined) })
export type WithinSearch = z.output<typeof withinSearch>

export const auditSearch = z.object({
  table: z.string().max(60).optional().catch(undefined),
  row: z.uuid().optional().catch(undefined),
})
export type AuditSearch = z.output<typeof auditSearch>

export const metersSearch = z.object({ q: z.string().max(200).optional().catch(undefined) })
export type MetersSearch = z.output<typeof metersSearch>

export const newChartSearch = z.object({ from: z.uuid().optional().catch(undefined) })
export type NewChartSearch = z.output<typeof newChartSearch>
