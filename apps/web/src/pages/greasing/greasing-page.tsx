import { createGreasing } from '@shaftbook/contract/greasing'
import { useSearch } from '@tanstack/react-router'
import { LogDialog } from '../../features/greasing/log-dialog.tsx'
import { PlanDialog } from '../../features/greasing/plan-dialog.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { DonePart } from './done-part.tsx'
import { DuePart } from './due-part.tsx'
import { GreasingNav } from './greasing-nav.tsx'
import type { GreasingSearch } from './greasing-search.ts'
import { SealedPart } from './sealed-part.tsx'

const parts = {
  due: {
    sentence: 'By run hours or by the calendar, whichever comes first; the longest due on top.',
    Part: DuePart,
  },
  done: {
    sentence: 'What was done, when, and whether it met its window. A wrong record is corrected by a further one.',
    Part: DonePart,
  },
  sealed: { sentence: 'Positions that take no grease: they stand here, so that none is forgotten.', Part: SealedPart },
} as const

/** What is due, what was done, and the plans behind it. */
export function GreasingPage() {
  const { may } = useSite()
  const { tab = 'due', log, do: task, plan }: GreasingSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const { sentence, Part } = parts[tab]
  return (
    <>
      <PageHead title="Greasing" sentence={sentence} />
      <GreasingNav active={tab} />
      <Part />
      {log !== undefined && may(createGreasing) && (
        <LogDialog positionId={log} task={task} onClose={() => change({ log: undefined, do: undefined })} />
      )}
      {plan !== undefined && <PlanDialog positionId={plan} onClose={() => change({ plan: undefined })} />}
    </>
  )
}
