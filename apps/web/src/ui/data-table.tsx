import { useMediaQuery } from '@mantine/hooks'
import {
  createSortedRowModel,
  rowSortingFeature,
  sortFn_alphanumeric,
  tableFeatures,
  useTable,
  type ColumnDef,
  type SortingState,
} from '@tanstack/react-table'
import { useMemo, useState, type ReactNode } from 'react'
import { StackedRows } from './data-table-stacked.tsx'
import { TableFoot } from './data-table-foot.tsx'
import type { DataColumn, TableMore, TableSort } from './data-table-types.ts'
import { WideTable } from './data-table-wide.tsx'

interface DataTableProps<Row> {
  /** What the rows are; the table's name to a screen reader: "Positions". */
  caption: string
  columns: readonly DataColumn<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  /** Where a row leads; the whole row then follows the link. */
  rowHref?: (row: Row) => string
  /** Sorting by the server: the page keeps `sort` in its address. Without `onSort` rows are sorted here. */
  sort?: TableSort | undefined
  onSort?: (sort: TableSort | undefined) => void
  more?: TableMore | undefined
  empty: ReactNode
}

const features = tableFeatures({
  rowSortingFeature,
  sortedRowModel: createSortedRowModel(),
  sortFns: { alphanumeric: sortFn_alphanumeric },
})

/** A dense table of rules and rows; on a phone each row becomes a short stack. Long lists draw only what is in view. */
export function DataTable<Row extends object>(props: DataTableProps<Row>) {
  const { caption, columns, rows, rowKey, rowHref, sort, onSort, more, empty } = props
  const phone = useMediaQuery('(max-width: 699px)', undefined, { getInitialValueInEffect: false })
  const [localSort, setLocalSort] = useState<TableSort | undefined>()
  const shownSort = onSort ? sort : localSort
  const columnDefs = useMemo(
    () =>
      columns.map<ColumnDef<typeof features, Row>>((column) => ({
        id: column.key,
        accessorFn: (row: Row) => column.sortValue?.(row),
        enableSorting: onSort ? (column.sortable ?? false) : column.sortValue !== undefined,
        sortUndefined: 'last',
        sortFn: 'alphanumeric',
      })),
    [columns, onSort],
  )
  const sorting: SortingState = shownSort ? [{ id: shownSort.key, desc: shownSort.descending }] : []
  const table = useTable({
    features,
    columns: columnDefs,
    data: rows,
    getRowId: rowKey,
    manualSorting: onSort !== undefined,
    state: { sorting },
  })
  const sortedRows = table.getRowModel().rows.map(({ original }) => original)
  const canSort = (key: string) => table.getColumn(key)?.getCanSort() ?? false
  const shared = { caption, columns, rows: sortedRows, rowKey, rowHref, sort: shownSort, canSort }
  const changeSort = onSort ?? setLocalSort

  if (rows.length === 0 && !more?.loading) return <>{empty}</>
  return (
    <div>
      {phone ? <StackedRows {...shared} onSort={changeSort} /> : <WideTable {...shared} onSort={changeSort} />}
      <TableFoot more={more} shown={rows.length} />
    </div>
  )
}
