import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'

/** The parts of greasing. */
export function GreasingNav({ active }: { active: string }) {
  const { code } = useSite()
  const greasing = paths.greasing(code)
  return (
    <SectionNav
      label="Greasing"
      active={active}
      places={[
        { key: 'due', label: 'Due', href: greasing },
        { key: 'done', label: 'Done', href: `${greasing}?tab=done` },
        { key: 'rounds', label: 'Rounds', href: paths.rounds(code) },
        { key: 'sealed', label: 'Sealed for life', href: `${greasing}?tab=sealed` },
        { key: 'ahead', label: 'Ahead', href: paths.greasingAhead(code) },
        { key: 'compliance', label: 'Compliance', href: paths.greasingCompliance(code) },
        { key: 'mail', label: 'Calendar and mail', href: paths.greasingMail(code) },
      ]}
    />
  )
}
