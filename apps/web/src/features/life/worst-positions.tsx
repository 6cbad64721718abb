import type { LifeSummary } from '@shaftbook/contract/life'
import { formatCount } from '../../lib/format-count.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import classes from './worst-positions.module.css'

type Worst = LifeSummary['worst'][number]

const columns: readonly DataColumn<Worst>[] = [
  { key: 'tag', header: 'Position', cell: (row) => <span className={classes.tag}>{row.tag}</span>, phone: 'title' },
  { key: 'machine', header: 'Machine', cell: (row) => row.machineName },
  { key: 'failures', header: 'Failures', cell: (row) => row.failures, align: 'right' },
  { key: 'stays', header: 'Bearings', cell: (row) => row.stays, align: 'right' },
  { key: 'hours', header: 'Run hours', unit: 'h', cell: (row) => formatCount(row.runHours), align: 'right' },
  { key: 'without', header: 'Without hours', cell: (row) => row.staysWithoutHours || '–', align: 'right' },
]

/** Positions that failed twice or more. */
export function WorstPositions({ worst }: { worst: readonly Worst[] }) {
  const { code } = useSite()
  return (
    <DataTable
      caption="Positions that failed twice or more"
      columns={columns}
      rows={worst}
      rowKey={({ positionId }) => positionId}
      rowHref={({ positionId }) => paths.position(code, positionId)}
      empty={
        <EmptyState
          heading="h3"
          title="No position has failed twice"
          text="One failure alone says little about a position."
        />
      }
    />
  )
}
