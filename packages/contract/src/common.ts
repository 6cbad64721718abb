import { z } from 'zod'

export const Id = z.uuid()
/** Years that anything in the book can lie in; a year typed with two or three digits is a slip. */
const inTheBook = (text: string): boolean => {
  const ms = Date.parse(text)
  return ms >= earliestMs && ms < latestMs
}
const earliestMs = Date.UTC(1900, 0, 1)
const latestMs = Date.UTC(9999, 11, 31)
const yearAtFault = 'takes a year from 1900 on, in four digits'
export const Instant = z.iso.datetime({ offset: true }).refine(inTheBook, yearAtFault)
export const Day = z.iso.date().refine((text) => text >= '1900-01-01', yearAtFault)
export const Text = z.string().trim().max(2000)
export const Name = z.string().trim().min(1, 'Enter a name').max(120)
export const Reason = z.string().trim().min(3, 'Give the reason in a few words').max(2000)

/** A run of hours on a machine's meter. */
export const RunHours = z.number().min(0).max(1_000_000)
/** A clearance or a difference of clearances, in micrometres, to the nanometre. */
export const Micrometres = z.number().min(-2000).max(2000)
export const Millimetres = z.number().positive().max(10_000)
/** A dose of grease. */
export const Grams = z.number().min(0.1).max(20_000)

/** What the service adds to a register row. */
export const rowShape = { id: Id, version: z.int(), createdAt: Instant, updatedAt: Instant }

export const siteParams = z.object({ site: z.string().min(1).max(60) })
export const recordParams = z.object({ ...siteParams.shape, id: Id })

export const pageQuery = {
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(500).optional(),
}

/** A page of a list; `nextCursor` is null on the last page. */
export function page<S extends z.ZodType>(item: S) {
  return z.object({ items: z.array(item), nextCursor: z.string().nullable() })
}

/** A filter of a query string: `?standby=true`. */
export const Flagged = z.enum(['true', 'false']).transform((text) => text === 'true')
