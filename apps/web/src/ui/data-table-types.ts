import type { ReactNode } from 'react'

export interface DataColumn<Row> {
  key: string
  header: string
  /** Symbol of the unit, shown with the header. */
  unit?: string
  cell: (row: Row) => ReactNode
  /** The server can sort by this column; needs `onSort`. */
  sortable?: boolean
  /** The value to sort by here, for short lists that are wholly loaded. */
  sortValue?: (row: Row) => string | number | undefined
  align?: 'left' | 'right'
  /** CSS width on a wide screen. */
  width?: string
  /** On a phone: the row's first line, its right end, a labelled line (default), or left out. */
  phone?: 'title' | 'aside' | 'line' | 'hidden'
}

export interface TableSort {
  key: string
  descending: boolean
}

export interface TableBodyProps<Row> {
  caption: string
  columns: readonly DataColumn<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  rowHref: ((row: Row) => string) | undefined
  sort: TableSort | undefined
  canSort: (key: string) => boolean
  onSort: (sort: TableSort | undefined) => void
}

export interface TableMore {
  /** Rows that match in all, when known. */
  total?: number | undefined
  hasMore: boolean
  loading: boolean
  onMore: () => void
}
