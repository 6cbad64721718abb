import type { MakerChart } from '@shaftbook/contract/maker-charts'
import { Button } from '@mantine/core'
import { useUnits } from '../../lib/units.tsx'
import { lengthDigits } from '../../lib/length-units.ts'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { useNotice } from '../../ui/notice.tsx'
import { chartTableText } from './chart-table-text.ts'

type Row = MakerChart['rows'][number]
type Units = ReturnType<typeof useUnits>

/** The rows of a chart, in the person's units. */
export function ChartView({ rows }: { rows: readonly Row[] }) {
  const units = useUnits()
  return (
    <DataTable
      caption="Rows of the chart"
      columns={chartViewColumns(units)}
      rows={rows}
      rowKey={({ id }) => id}
      empty={null}
    />
  )
}

/** Copies the rows as a table that a spreadsheet takes, in the person's units. */
export function CopyRows({ rows }: { rows: readonly Row[] }) {
  const { unit } = useUnits()
  const notice = useNotice()
  const copy = () =>
    navigator.clipboard.writeText(chartTableText(rows, unit)).then(
      () => notice.done('The rows are copied: paste them into a spreadsheet.'),
      () => notice.failed('This browser does not let the page copy: mark the table and copy it by hand.'),
    )
  return (
    <Button variant="subtle" size="compact-sm" onClick={() => void copy()}>
      Copy as a table
    </Button>
  )
}

const nothing = '–'

function chartViewColumns({ unit, symbol }: Units): DataColumn<Row>[] {
  const clearance = (um: number | null) => (um === null ? nothing : lengthDigits(um, unit))
  const range = (from: string | number | null, to: string | number | null) =>
    from === null && to === null ? nothing : `${from ?? nothing} to ${to ?? nothing}`
  const right = { align: 'right' } as const
  return [
    { key: 'bore', header: 'Bore', unit: 'mm', cell: (row) => `over ${row.overMm} to ${row.inclMm}`, phone: 'title' },
    { key: 'taper', header: 'Taper', cell: (row) => row.taper, phone: 'aside' },
    { key: 'class', header: 'Class', cell: (row) => row.clearanceClass ?? 'all' },
    {
      key: 'reduction',
      header: 'Reduction',
      unit: symbol,
      cell: (row) => range(clearance(row.reductionMinUm), clearance(row.reductionMaxUm)),
      ...right,
    },
    { key: 'cn', header: 'Least left, CN', unit: symbol, cell: (row) => clearance(row.residualMinCnUm), ...right },
    { key: 'c3', header: 'Least left, C3', unit: symbol, cell: (row) => clearance(row.residualMinC3Um), ...right },
    { key: 'c4', header: 'Least left, C4', unit: symbol, cell: (row) => clearance(row.residualMinC4Um), ...right },
    {
      key: 'drive',
      header: 'Drive-up',
      unit: 'mm',
      cell: (row) => range(row.driveUpMinMm, row.driveUpMaxMm),
      ...right,
    },
  ]
}
