import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { useQuery } from '@tanstack/react-query'
import { Suspense } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { GreasingDialog } from './greasing-dialog.tsx'
import { placeQuery } from './greasing-queries.ts'
import { LogForm } from './log-form.tsx'
import { taskActs, usualTask } from './task-acts.ts'

interface LogDialogProps {
  positionId: string
  /** What was done; where it is not said, what the position is there for. */
  task?: GreaseTask | undefined
  onClose: () => void
}

/** Logs a task of a position: what its plan says, now, one tap. */
export function LogDialog({ positionId, task, onClose }: LogDialogProps) {
  const { code } = useSite()
  const place = useQuery(placeQuery(code, positionId))
  const title = taskActs[task ?? 'regrease'].log
  const opening = (
    <GreasingDialog title={title} onClose={onClose}>
      <LoadingRows what="the position" rows={3} />
    </GreasingDialog>
  )
  if (place.data) {
    const logged = task ?? usualTask(place.data)
    return (
      <Suspense fallback={opening}>
        <LogForm key={`${positionId} ${logged}`} place={place.data} task={logged} onClose={onClose} />
      </Suspense>
    )
  }
  if (!place.isError) return opening
  return (
    <GreasingDialog title={title} onClose={onClose}>
      <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />
    </GreasingDialog>
  )
}
