import { useRef } from 'react'
import { AppLink } from './link.tsx'
import type { DataColumn, TableBodyProps } from './data-table-types.ts'
import { useRowWindow } from './use-row-window.ts'
import classes from './data-table.module.css'

export function WideTable<Row>(props: TableBodyProps<Row>) {
  const { caption, columns, rows, rowKey, rowHref } = props
  const box = useRef<HTMLTableElement>(null)
  const rowWindow = useRowWindow(box, rows.length, 37)
  return (
    <table ref={box} className={classes.table} aria-rowcount={rows.length + 1}>
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <HeadCell key={column.key} column={column} {...props} />
          ))}
        </tr>
      </thead>
      <tbody>
        <Gap height={rowWindow.before} />
        {rowWindow.indexes.map((index) => {
          const row = rows[index]
          if (row === undefined) return null
          return (
            <tr
              key={rowKey(row)}
              ref={rowWindow.measure}
              data-index={index}
              aria-rowindex={index + 2}
              className={rowHref && classes.linked}
            >
              {columns.map((column, at) => (
                <td key={column.key} data-align={column.align}>
                  {at === 0 && rowHref ? (
                    <AppLink className={classes.rowLink} href={rowHref(row)}>
                      {column.cell(row)}
                    </AppLink>
                  ) : (
                    column.cell(row)
                  )}
                </td>
              ))}
            </tr>
          )
        })}
        <Gap height={rowWindow.after} />
      </tbody>
    </table>
  )
}

/** Stands for the rows out of view. */
function Gap({ height }: { height: number }) {
  return height > 0 ? <tr aria-hidden="true" style={{ height }} /> : null
}

function HeadCell<Row>({ column, sort, canSort, onSort }: TableBodyProps<Row> & { column: DataColumn<Row> }) {
  const sorted = sort?.key === column.key
  const title = (
    <>
      {column.header}
      {column.unit && <span className={classes.unit}> {column.unit}</span>}
    </>
  )
  if (!canSort(column.key))
    return (
      <th scope="col" data-align={column.align} style={{ width: column.width }}>
        {title}
      </th>
    )
  return (
    <th
      scope="col"
      data-align={column.align}
      style={{ width: column.width }}
      aria-sort={sorted ? (sort.descending ? 'descending' : 'ascending') : 'none'}
    >
      <button
        type="button"
        className={classes.sort}
        onClick={() => onSort({ key: column.key, descending: sorted ? !sort.descending : false })}
      >
        {title}
        <SortArrow direction={sorted ? (sort.descending ? 'down' : 'up') : null} />
      </button>
    </th>
  )
}

function SortArrow({ direction }: { direction: 'up' | 'down' | null }) {
  return (
    <svg viewBox="0 0 10 12" width="10" height="12" aria-hidden="true" className={classes.arrow}>
      <path d="M5 1 1.5 5h7Z" data-on={direction === 'up' || undefined} />
      <path d="M5 11 1.5 7h7Z" data-on={direction === 'down' || undefined} />
    </svg>
  )
}
