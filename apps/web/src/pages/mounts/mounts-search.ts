import { Verdict } from '@shaftbook/contract/judgement'
import { z } from 'zod'

/** What the address of the list of mount records says. A part that is not understood counts as not given. */
export const mountsSearch = z.object({
  verdict: Verdict.optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  state: z.enum(['draft', 'signed']).optional().catch(undefined),
  q: z.string().max(200).optional().catch(undefined),
})
export type MountsSearch = z.output<typeof mountsSearch>
