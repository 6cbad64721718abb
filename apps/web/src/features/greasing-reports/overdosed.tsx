import type { GreasingCompliance } from '@shaftbook/contract/greasing-reports'
import { useMemo } from 'react'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './reports.module.css'

type Dose = GreasingCompliance['overdosed'][number]

/** Doses of more than one and a half times the planned one, newest first. R-OVER. */
export function Overdosed({ compliance }: { compliance: GreasingCompliance }) {
  const { code, site } = useSite()
  const columns = useMemo(() => doseColumns(code, site.timeZone), [code, site.timeZone])
  const { overdosed, overdosedInAll } = compliance
  return (
    <>
      <p className={classes.note}>
        Above 1.5 times the planned dose is a deviation; above twice, open the outlet and watch the temperature
        (R-OVER).
        {overdosedInAll > overdosed.length && ` The newest ${overdosed.length} of ${overdosedInAll} are listed.`}
      </p>
      <DataTable<Dose>
        caption="Doses that were too large, newest first"
        columns={columns}
        rows={overdosed}
        rowKey={({ id }) => id}
        empty={<EmptyState heading="h3" title="No dose was too large in this period" />}
      />
    </>
  )
}

function doseColumns(code: string, timeZone: string): DataColumn<Dose>[] {
  return [
    {
      key: 'tag',
      header: 'Position',
      phone: 'title',
      cell: ({ positionId, tag }) => <AppLink href={paths.position(code, positionId)}>{tag}</AppLink>,
    },
    {
      key: 'verdict',
      header: 'How much',
      phone: 'aside',
      cell: ({ doseG, plannedDoseG, verdict }) => (
        <strong>
          {(doseG / plannedDoseG).toFixed(1)} times{verdict === 'far-over' ? ', outlet open?' : ''}
        </strong>
      ),
    },
    { key: 'dose', header: 'Dose', cell: ({ doseG, plannedDoseG }) => `${doseG} g of ${plannedDoseG} g planned` },
    {
      key: 'at',
      header: 'Greased',
      cell: ({ greasedAt }) => <Timestamp at={greasedAt} timeZone={timeZone} relative={false} />,
    },
    { key: 'by', header: 'By', cell: ({ signedBy }) => signedBy },
  ]
}
