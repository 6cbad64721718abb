import { isGunPlan, type GreasePlan } from '@shaftbook/contract/grease-plans'
import { dutyOf } from '@shaftbook/contract/plan-duty'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import type { DutyEntry } from './duty-entry.ts'
import { EndPlan } from './end-plan.tsx'
import { GreasingDialog } from './greasing-dialog.tsx'
import { placeQuery } from './greasing-queries.ts'
import { PlanForm } from './plan-form.tsx'
import { PlansView } from './plans-view.tsx'
import type { OtherWay } from './way-entry.ts'
import { WayForm } from './way-form.tsx'
import { wayWords } from './way-words.ts'
import { WhatIf } from './what-if.tsx'

interface PlanDialogProps {
  positionId: string
  onClose: () => void
}

/** What the dialog is at. */
type View =
  | { at: 'plans' }
  | { at: 'gun'; tried?: DutyEntry }
  | { at: 'way'; way: OtherWay }
  | { at: 'what-if' }
  | { at: 'end'; plan: GreasePlan }

/** The plans of a position: what is done there again and again, and why so often. */
export function PlanDialog({ positionId, onClose }: PlanDialogProps) {
  const { code } = useSite()
  const place = useQuery(placeQuery(code, positionId))
  const [view, setView] = useState<View>({ at: 'plans' })
  const back = (): void => setView({ at: 'plans' })
  const begin = (task: OtherWay | 'regrease'): void =>
    setView(task === 'regrease' ? { at: 'gun' } : { at: 'way', way: task })
  if (!place.data)
    return (
      <GreasingDialog title="Plans" onClose={onClose} wide>
        {place.isError ? (
          <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />
        ) : (
          <LoadingRows what="the plans" rows={4} />
        )}
      </GreasingDialog>
    )
  const { plan, position } = place.data
  const duty = plan && dutyOf(plan)
  return (
    <GreasingDialog title={titleOf(view, position.tag)} onClose={onClose} typed={view.at !== 'plans'} wide>
      {view.at === 'plans' && (
        <PlansView
          place={place.data}
          onWhatIf={() => setView({ at: 'what-if' })}
          onBegin={begin}
          onChange={(old) => begin(isGunPlan(old) ? 'regrease' : (old.task ?? 'sealed'))}
          onEnd={(old) => setView({ at: 'end', plan: old })}
          onClose={onClose}
        />
      )}
      {view.at === 'gun' && <PlanForm place={place.data} tried={view.tried} onDone={back} />}
      {view.at === 'way' && <WayForm way={view.way} place={place.data} onDone={back} />}
      {view.at === 'end' && <EndPlan plan={view.plan} onDone={back} />}
      {view.at === 'what-if' && plan && duty && (
        <WhatIf
          plan={plan}
          duty={duty}
          place={place.data}
          onBack={back}
          onTake={(tried) => setView({ at: 'gun', tried })}
        />
      )}
    </GreasingDialog>
  )
}

function titleOf(view: View, tag: string): string {
  if (view.at === 'gun') return `Regreasing plan of ${tag}`
  if (view.at === 'way') return `${wayWords[view.way].title}: ${tag}`
  if (view.at === 'end') return `End a plan of ${tag}`
  return view.at === 'what-if' ? `What if at ${tag}` : `Plans of ${tag}`
}
