import { DueState } from '@shaftbook/contract/greasing'
import { Verdict } from '@shaftbook/contract/judgement'
import { z } from 'zod'

/** What is typed may be all digits ("22220"); an address then holds a number. */
const typed = z.union([z.string().max(200), z.number().transform(String)])

/** What the address of the register says. A part that is not understood counts as not given. */
export const positionsSearch = z.object({
  view: z.enum(['tree', 'table']).optional().catch(undefined),
  q: typed.optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  machine: z.uuid().optional().catch(undefined),
  verdict: Verdict.optional().catch(undefined),
  due: DueState.optional().catch(undefined),
  sort: z.enum(['tag', '-tag', 'dueOn', '-dueOn']).optional().catch(undefined),
  /** Branches of the tree that are open: codes of areas and tags of machines, joined by "~". */
  open: typed.optional().catch(undefined),
})
export type PositionsSearch = z.output<typeof positionsSearch>
