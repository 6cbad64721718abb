import type { KitLine } from '@shaftbook/contract/kits'
import type { z } from 'zod'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import classes from './stores.module.css'

export type Line = z.output<typeof KitLine>

const columns: readonly DataColumn<Line>[] = [
  { key: 'designation', header: 'Part', cell: ({ designation }) => designation, phone: 'title' },
  { key: 'number', header: 'Number', cell: ({ partNumber }) => partNumber, phone: 'hidden' },
  { key: 'description', header: 'What it is', cell: ({ description, kind }) => description || kind },
  {
    key: 'quantity',
    header: 'Quantity',
    cell: ({ quantity, unit }) => <span className={classes.quantity}>{`${quantity} ${unit}`}</span>,
    align: 'right',
    phone: 'aside',
  },
  { key: 'need', header: 'Need', cell: (line) => <Need line={line} /> },
  { key: 'bin', header: 'Bin', cell: ({ bin }) => bin ?? <span className={classes.soft}>no bin</span> },
]

/** The lines of a kit, each leading to its part. */
export function KitLines({ lines, caption }: { lines: readonly Line[]; caption: string }) {
  const { code } = useSite()
  return (
    <DataTable
      caption={caption}
      columns={columns}
      rows={lines}
      rowKey={({ id }) => id}
      rowHref={({ partId }) => paths.part(code, partId)}
      empty={<EmptyState heading="h3" title="This kit has no lines yet" text="Stores or an engineer enters them." />}
    />
  )
}

/** Whether a line must go on or may, and why. */
export function Need({ line }: { line: Pick<Line, 'need' | 'reason'> }) {
  return (
    <>
      {line.need}
      {line.reason && <span className={classes.reason}>{line.reason}</span>}
    </>
  )
}
