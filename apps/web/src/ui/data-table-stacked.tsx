import { NativeSelect } from '@mantine/core'
import { useRef } from 'react'
import { AppLink } from './link.tsx'
import type { DataColumn, TableBodyProps } from './data-table-types.ts'
import { useRowWindow } from './use-row-window.ts'
import classes from './data-table.module.css'

/** The same rows for a narrow screen: a first line, then labelled lines. */
export function StackedRows<Row>(props: TableBodyProps<Row>) {
  const { caption, columns, rows, rowKey, rowHref } = props
  const box = useRef<HTMLUListElement>(null)
  const rowWindow = useRowWindow(box, rows.length, 96)
  const title = columns.find(({ phone }) => phone === 'title') ?? columns[0]
  const aside = columns.filter(({ phone }) => phone === 'aside')
  const lines = columns.filter((column) => column !== title && (column.phone ?? 'line') === 'line')
  return (
    <>
      <SortChoice {...props} />
      <ul ref={box} className={classes.stack} aria-label={caption}>
        {rowWindow.before > 0 && <li aria-hidden="true" style={{ height: rowWindow.before }} />}
        {rowWindow.indexes.map((index) => {
          const row = rows[index]
          if (row === undefined || title === undefined) return null
          return (
            <li
              key={rowKey(row)}
              ref={rowWindow.measure}
              data-index={index}
              className={classes.stackRow}
              data-linked={rowHref ? true : undefined}
            >
              <div className={classes.stackHead}>
                <span className={classes.stackTitle}>
                  {rowHref ? (
                    <AppLink className={classes.rowLink} href={rowHref(row)}>
                      {title.cell(row)}
                    </AppLink>
                  ) : (
                    title.cell(row)
                  )}
                </span>
                {aside.map((column) => (
                  <span key={column.key}>{column.cell(row)}</span>
                ))}
              </div>
              <dl className={classes.lines}>
                {lines.map((column) => (
                  <Line key={column.key} column={column} row={row} />
                ))}
              </dl>
            </li>
          )
        })}
        {rowWindow.after > 0 && <li aria-hidden="true" style={{ height: rowWindow.after }} />}
      </ul>
    </>
  )
}

function Line<Row>({ column, row }: { column: DataColumn<Row>; row: Row }) {
  return (
    <div className={classes.line}>
      <dt>
        {column.header}
        {column.unit && <span className={classes.unit}> {column.unit}</span>}
      </dt>
      <dd>{column.cell(row)}</dd>
    </div>
  )
}

function SortChoice<Row>({ columns, canSort, sort, onSort }: TableBodyProps<Row>) {
  const sortable = columns.filter(({ key }) => canSort(key))
  if (sortable.length === 0) return null
  const choices = sortable.flatMap(({ key, header }) => [
    { value: `${key}:up`, label: `${header}, rising` },
    { value: `${key}:down`, label: `${header}, falling` },
  ])
  return (
    <NativeSelect
      label="Sort by"
      className={classes.sortChoice}
      data={[{ value: '', label: 'as listed' }, ...choices]}
      value={sort ? `${sort.key}:${sort.descending ? 'down' : 'up'}` : ''}
      onChange={(event) => {
        const [key, way] = event.currentTarget.value.split(':')
        onSort(key ? { key, descending: way === 'down' } : undefined)
      }}
    />
  )
}
