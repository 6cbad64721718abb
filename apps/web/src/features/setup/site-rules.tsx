import type { Site } from '@shaftbook/contract/access'
import { useUnits } from '../../lib/units.tsx'
import { DefinitionList } from '../../ui/definition-list.tsx'
import type { FieldSpec } from './form-spec.ts'
import { PartSection } from './part-section.tsx'
import { siteGroups } from './site-fields.ts'

/** The site's settings to read, for those who do not change them. */
export function SiteRules({ site }: { site: Site }) {
  const { length } = useUnits()
  const values: Record<string, unknown> = { ...site, ...site.settings }
  const shown = (field: FieldSpec): string => {
    const value = values[field.name]
    if (field.kind === 'clearance') return typeof value === 'number' ? length(value) : 'the usual one'
    if (field.kind === 'choice') return field.choices.find((choice) => choice.value === value)?.label ?? String(value)
    return field.kind === 'number' && field.unit ? `${String(value)} ${field.unit}` : String(value)
  }
  return (
    <>
      {siteGroups.map(({ title = 'Site', fields }) => (
        <PartSection key={title} title={title}>
          <DefinitionList
            items={fields.map((field) => ({ label: field.label, value: shown(field), note: field.help }))}
          />
        </PartSection>
      ))}
    </>
  )
}
