import { GreaseTask } from '@shaftbook/contract/grease-plans'
import { DueState, WindowResult } from '@shaftbook/contract/greasing'
import { z } from 'zod'

/** What the address of the greasing page says. A part that is not understood counts as not given. */
export const greasingSearch = z.object({
  tab: z.enum(['due', 'done', 'sealed']).optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  task: GreaseTask.optional().catch(undefined),
  state: DueState.optional().catch(undefined),
  window: WindowResult.optional().catch(undefined),
  q: z.string().max(200).optional().catch(undefined),
  /** The position whose work is being logged, with its task, or whose plans are open. */
  log: z.uuid().optional().catch(undefined),
  do: GreaseTask.optional().catch(undefined),
  plan: z.uuid().optional().catch(undefined),
})
export type GreasingSearch = z.output<typeof greasingSearch>
