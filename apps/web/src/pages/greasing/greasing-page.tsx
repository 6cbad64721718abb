import { createGreasing } from '@shaftbook/contract/greasing'
import { useSearch } from '@tanstack/react-router'
import { LogDialog } from '../../features/greasing/log-dialog.tsx'
import { PlanDialog } from '../../features/greasing/plan-dialog.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'
import { DonePart } from './done-part.tsx'
import { DuePart } from './due-part.tsx'
import type { GreasingSearch } from './greasing-search.ts'

/** What is due for grease, what was greased, and the plans behind it. */
export function GreasingPage() {
  const { code, may } = useSite()
  const { tab = 'due', log, plan }: GreasingSearch = useSearch({ strict: false })
  const change = useSearchChange()
  return (
    <>
      <PageHead title="Greasing" sentence={tab === 'due' ? dueSentence : doneSentence} />
      <SectionNav
        label="Greasing"
        active={tab}
        places={[
          { key: 'due', label: 'Due', href: paths.greasing(code) },
          { key: 'done', label: 'Done', href: `${paths.greasing(code)}?tab=done` },
        ]}
      />
      {tab === 'due' ? <DuePart /> : <DonePart />}
      {log !== undefined && may(createGreasing) && (
        <LogDialog positionId={log} onClose={() => change({ log: undefined })} />
      )}
      {plan !== undefined && <PlanDialog positionId={plan} onClose={() => change({ plan: undefined })} />}
    </>
  )
}

const dueSentence = 'By run hours or by the calendar, whichever comes first; the longest due on top.'
const doneSentence = 'What went in, when, and whether it met its window. A wrong record is corrected by a further one.'
