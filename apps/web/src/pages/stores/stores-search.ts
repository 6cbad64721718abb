import { PartKind } from '@shaftbook/contract/register-tables'
import { z } from 'zod'

/** What is typed may be all digits ("22220"); an address then holds a number. */
const typed = z.union([z.string().max(200), z.number().transform(String)])

/** What the address of the store's search says. A part that is not understood counts as not given. */
export const findSearch = z.object({ q: typed.optional().catch(undefined) })
export type FindSearch = z.output<typeof findSearch>

export const partsSearch = z.object({
  q: typed.optional().catch(undefined),
  kind: PartKind.optional().catch(undefined),
  sort: z.enum(['number', '-number', 'designation', '-designation', 'bin', '-bin']).optional().catch(undefined),
})
export type PartsSearch = z.output<typeof partsSearch>
