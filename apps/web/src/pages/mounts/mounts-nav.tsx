import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { planQueries } from '../../features/mount-plans/plan-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'

/** Records and planned mounts, with how many are planned. */
export function MountsNav({ active }: { active: 'records' | 'planned' }) {
  const { code } = useSite()
  const plans = useInfiniteQuery(planQueries.list(code, { state: 'open' }))
  const { rows, more } = listed(plans)
  const count = plans.isSuccess && !more.hasMore ? rows.length : undefined
  return (
    <SectionNav
      label="Mounts"
      active={active}
      places={[
        { key: 'records', label: 'Records', href: paths.mounts(code) },
        { key: 'planned', label: 'Planned', href: paths.plannedMounts(code), count },
      ]}
    />
  )
}
