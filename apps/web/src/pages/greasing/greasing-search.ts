import { DueState, WindowResult } from '@shaftbook/contract/greasing'
import { z } from 'zod'

/** What the address of the greasing page says. A part that is not understood counts as not given. */
export const greasingSearch = z.object({
  tab: z.enum(['due', 'done']).optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  state: DueState.optional().catch(undefined),
  window: WindowResult.optional().catch(undefined),
  q: z.string().max(200).optional().catch(undefined),
  /** The position whose greasing is being logged, or whose plan is open. */
  log: z.uuid().optional().catch(undefined),
  plan: z.uuid().optional().catch(undefined),
})
export type GreasingSearch = z.output<typeof greasingSearch>
