import type { GreaseChange } from '@shaftbook/contract/grease-changes'
import { baseUrgency, type WantedFlag } from './flag-rules.ts'

/** A change-over from one grease to another that is under way. */
export interface ChangeFacts {
  readonly changeId: string
  readonly state: GreaseChange['state']
  readonly fromName: string
  readonly toName: string
  readonly dosesLeft: number | null
  readonly startedAt: string
}

/** The flag that stands until a change-over is finished. R-CHG. */
export function changeFlag({ changeId, state, fromName, toName, dosesLeft, startedAt }: ChangeFacts): WantedFlag {
  const kind = 'grease-change-open'
  const facts = {
    greaseChangeId: changeId,
    changeState: state,
    fromGreaseName: fromName,
    toGreaseName: toName,
    dosesLeft: dosesLeft ?? undefined,
  }
  return { kind, subjectId: changeId, since: startedAt, urgency: baseUrgency[kind], facts }
}

/** SQL for the open change-over of a position's alias: `ChangeFacts`, or null. */
export function openChange(position: string): string {
  return `(
      select jsonb_build_object('changeId', x.id, 'state', x.state, 'fromName', was.name, 'toName', becomes.name,
        'dosesLeft', x.doses_left, 'startedAt', x.started_at)
      from grease_change x
      join grease was on was.site_id = x.site_id and was.id = x.from_grease_id
      join grease becomes on becomes.site_id = x.site_id and becomes.id = x.to_grease_id
      where x.site_id = ${position}.site_id and x.position_id = ${position}.id and x.ended_at is null)`
}
