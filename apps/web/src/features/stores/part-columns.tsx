import type { DataColumn } from '../../ui/data-table-types.ts'
import { partKindWords } from './part-kinds.ts'
import type { KitItem, Part } from './stores-queries.ts'
import classes from './stores.module.css'

export const partColumns: readonly DataColumn<Part>[] = [
  { key: 'designation', header: 'Part', cell: ({ designation }) => designation, sortable: true, phone: 'title' },
  { key: 'number', header: 'Number', cell: ({ number }) => number, sortable: true, phone: 'aside' },
  { key: 'kind', header: 'Kind', cell: ({ kind }) => partKindWords[kind] },
  { key: 'description', header: 'What it is', cell: ({ description }) => description || '–' },
  {
    key: 'bin',
    header: 'Bin',
    cell: ({ bin }) => bin ?? <span className={classes.soft}>no bin</span>,
    sortable: true,
  },
]

export const kitColumns: readonly DataColumn<KitItem>[] = [
  { key: 'name', header: 'Kit', cell: ({ name }) => name, phone: 'title' },
  { key: 'note', header: 'Note', cell: ({ note }) => note || '–', phone: 'hidden' },
  { key: 'lines', header: 'Lines', cell: ({ lines }) => lines, align: 'right' },
  { key: 'positions', header: 'Positions', cell: ({ positions }) => positions, align: 'right' },
]
