import { Button, CloseButton } from '@mantine/core'
import { clearanceClasses } from '@shaftbook/standards/clearance-classes'
import { Fragment, useEffect, useRef } from 'react'
import { lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import { ScrollBox } from '../../ui/scroll-box.tsx'
import classes from './chart-rows-table.module.css'
import { chartColumns, nextRow, type ChartField, type TypedRow } from './chart-rows.ts'

interface ChartRowsTableProps {
  rows: readonly TypedRow[]
  unit: LengthUnit
  faults: ReadonlyMap<string, string>
  onChange: (rows: readonly TypedRow[]) => void
}

/** The rows of a chart, each cell a field. */
export function ChartRowsTable({ rows, unit, faults, onChange }: ChartRowsTableProps) {
  const table = useRef<HTMLTableElement>(null)
  const count = useRef(rows.length)
  useEffect(() => {
    const added = rows.length > count.current
    count.current = rows.length
    if (added) table.current?.querySelector<HTMLElement>('tbody tr:last-child input')?.focus()
  }, [rows.length])
  const change = (at: number, next: TypedRow) => onChange(rows.map((row, index) => (index === at ? next : row)))
  return (
    <div>
      <ScrollBox label="Rows of the chart">
        <table ref={table} className={classes.table}>
          <thead>
            <tr>
              <th scope="col">Taper</th>
              <th scope="col">Class</th>
              {chartColumns.map(({ name, header, kind, required }) => (
                <th key={name} scope="col">
                  {header}, {kind === 'mm' ? 'mm' : lengthUnits[unit].symbol}
                  {!required && <span className={classes.may}> (may be empty)</span>}
                </th>
              ))}
              <th scope="col">
                <span className="visually-hidden">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              <Fragment key={row.id}>
                <ChartRow
                  row={row}
                  at={at}
                  faults={faults}
                  onChange={(next) => change(at, next)}
                  onRemove={rows.length > 1 ? () => onChange(rows.filter(({ id }) => id !== row.id)) : undefined}
                />
                <RowFaults at={at} faults={faults} />
              </Fragment>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {faults.has('rows') && (
        <p className={classes.faults} role="alert">
          {sentence(faults.get('rows') ?? '')}
        </p>
      )}
      <Button variant="default" mt="sm" onClick={() => onChange([...rows, nextRow(rows.at(-1))])}>
        Add a row
      </Button>
    </div>
  )
}

interface ChartRowProps {
  row: TypedRow
  at: number
  faults: ReadonlyMap<string, string>
  onChange: (row: TypedRow) => void
  onRemove: (() => void) | undefined
}

function ChartRow({ row, at, faults, onChange, onRemove }: ChartRowProps) {
  const setCell = (name: ChartField, text: string) => onChange({ ...row, cells: { ...row.cells, [name]: text } })
  return (
    <tr>
      <td>
        <select
          className={classes.cell}
          aria-label={`Taper, row ${at + 1}`}
          value={row.taper}
          onChange={(event) => onChange({ ...row, taper: event.currentTarget.value as TypedRow['taper'] })}
        >
          <option>1:12</option>
          <option>1:30</option>
        </select>
      </td>
      <td>
        <select
          className={classes.cell}
          aria-label={`Class, row ${at + 1}`}
          value={row.clearanceClass ?? ''}
          onChange={(event) => onChange({ ...row, clearanceClass: classOf(event.currentTarget.value) })}
        >
          <option value="">all</option>
          {clearanceClasses.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </td>
      {chartColumns.map(({ name, header }) => (
        <td key={name}>
          <input
            className={classes.cell}
            name={`rows.${at}.${name}`}
            aria-label={`${header}, row ${at + 1}`}
            aria-invalid={faults.has(`rows.${at}.${name}`) || undefined}
            aria-describedby={faults.has(`rows.${at}.${name}`) ? faultsId(at) : undefined}
            inputMode="decimal"
            autoComplete="off"
            value={row.cells[name]}
            onChange={(event) => setCell(name, event.currentTarget.value)}
          />
        </td>
      ))}
      <td>{onRemove && <CloseButton aria-label={`Take out row ${at + 1}`} onClick={onRemove} />}</td>
    </tr>
  )
}

function classOf(text: string): TypedRow['clearanceClass'] {
  return clearanceClasses.find((name) => name === text) ?? null
}

/** What is wrong in a row, below it, named as the table names it. */
function RowFaults({ at, faults }: { at: number; faults: ReadonlyMap<string, string> }) {
  const ofRow = [...faults].filter(([path]) => path.startsWith(`rows.${at}.`))
  if (ofRow.length === 0) return null
  return (
    <tr>
      <td colSpan={chartColumns.length + 3}>
        <div id={faultsId(at)} className={classes.faults} role="alert">
          {ofRow.map(([path, message]) => (
            <p key={path}>{sentence(faultText(at, path, message))}</p>
          ))}
        </div>
      </td>
    </tr>
  )
}

function faultsId(at: number): string {
  return `chart-row-${at}-faults`
}

function faultText(at: number, path: string, message: string): string {
  if (message.startsWith('row ')) return message
  const header = chartColumns.find(({ name }) => path.endsWith(`.${name}`))?.header.toLowerCase()
  return `row ${at + 1}${header ? `, ${header}` : ''}: ${message}`
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`
}
