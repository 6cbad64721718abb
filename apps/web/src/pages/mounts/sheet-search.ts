import { z } from 'zod'
import { StepName } from '../../features/mounts/sheet-steps.ts'

/** What the address of a mount sheet says: the step on the screen, and the plan that it is made for. */
export const sheetSearch = z.object({
  step: StepName.optional().catch(undefined),
  plan: z.uuid().optional().catch(undefined),
})
export type SheetSearch = z.output<typeof sheetSearch>
