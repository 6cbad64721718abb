import { z } from 'zod'
import { Day, Id, Instant, Reason } from './common.ts'

/** accept-until: left as it is until a day, its flags come back then. do-again: to be mounted again. */
export const MountDecisionKind = z.enum(['accept-until', 'do-again'])

const decisionShape = {
  id: Id,
  kind: MountDecisionKind,
  until: Day.nullable().default(null).meta({ description: 'The day on which an accepted mount is looked at again' }),
  reason: Reason,
}
export const NewMountDecision = z.object(decisionShape)
export type NewMountDecision = z.infer<typeof NewMountDecision>

/** What the engineer decided on a mount that is not proven inside its limits. It stands beside the verdict. */
export const MountDecision = z.object({ ...decisionShape, decidedAt: Instant, decidedBy: z.string() })
export type MountDecision = z.infer<typeof MountDecision>
