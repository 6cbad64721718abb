import { NativeSelect } from '@mantine/core'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useSite } from '../../session/site-access.tsx'
import { gaugesQuery } from './mount-queries.ts'
import { useSheet } from './sheet-context.ts'
import { SheetText } from './sheet-fields.tsx'

/** The feeler set: one of the site's, or another one by its name. */
export function GaugeField() {
  const { code } = useSite()
  const { data: gauges } = useSuspenseQuery(gaugesQuery(code))
  const { sheet, change } = useSheet()
  const names = gauges.items.map(({ name }) => name)
  const [other, setOther] = useState(sheet.gauge !== '' && !names.includes(sheet.gauge))
  if (names.length === 0) return <SheetText at="gauge" label="Feeler set" />
  return (
    <>
      <NativeSelect
        size="touch"
        label="Feeler set"
        value={other ? otherSet : sheet.gauge}
        data={[
          { value: '', label: 'Not entered' },
          ...names.map((name) => ({ value: name, label: name })),
          { value: otherSet, label: 'Another set' },
        ]}
        onChange={(event) => {
          const chosen = event.currentTarget.value
          setOther(chosen === otherSet)
          change({ gauge: chosen === otherSet ? '' : chosen })
        }}
      />
      {other && <SheetText at="gauge" label="Name of the set" />}
    </>
  )
}

const otherSet = '*'
