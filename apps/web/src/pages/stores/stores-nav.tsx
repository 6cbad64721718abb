import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'

/** The parts of the stores section. */
export function StoresNav({ active }: { active: 'find' | 'parts' | 'kits' }) {
  const { code } = useSite()
  return (
    <SectionNav
      label="Stores"
      active={active}
      places={[
        { key: 'find', label: 'Find', href: paths.stores(code) },
        { key: 'parts', label: 'Parts', href: paths.parts(code) },
        { key: 'kits', label: 'Kits', href: paths.kits(code) },
      ]}
    />
  )
}
