import { EndKind } from '@shaftbook/contract/removals'
import { z } from 'zod'

/** What the address of the life page says. A part that is not understood counts as not given. */
export const lifeSearch = z.object({
  end: EndKind.optional().catch(undefined),
  mode: z
    .string()
    .regex(/^5(\.\d){1,3}$/)
    .optional()
    .catch(undefined),
})
export type LifeSearch = z.output<typeof lifeSearch>
