import { FlagKind } from '@shaftbook/contract/flags'
import { z } from 'zod'

/** What the address of the flag list says. A part that is not understood counts as not given. */
export const flagsSearch = z.object({
  state: z.enum(['open', 'put-off', 'cleared']).optional().catch(undefined),
  kind: FlagKind.optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  q: z.string().max(200).optional().catch(undefined),
})
export type FlagsSearch = z.output<typeof flagsSearch>
