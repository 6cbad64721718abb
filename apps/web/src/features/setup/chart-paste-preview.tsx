import type { LengthUnit } from '../../lib/length-units.ts'
import { lengthUnits } from '../../lib/length-units.ts'
import { ScrollBox } from '../../ui/scroll-box.tsx'
import classes from './chart-paste.module.css'
import type { PastedChart, PastedLine } from './chart-paste.ts'
import { columnRoles, type ColumnRole } from './paste-columns.ts'

interface PreviewProps {
  read: PastedChart
  onRole: (column: number, role: ColumnRole) => void
}

/** How each line of a pasted table was read, with what is wrong in it; the columns can be told what they are. */
export function ChartPastePreview({ read, onRole }: PreviewProps) {
  const { columns, lines, missing, twice, clearanceUnit } = read
  const unclear = missing.length + twice.length > 0
  if (lines.length === 0) {
    return <output className={classes.fault}>There is no line with numbers in it: copy the table itself.</output>
  }
  return (
    <div>
      <output className={unclear ? classes.fault : undefined}>
        {twice.length > 0 && `More than one column stands for: ${twice.join(', ')}. Leave one out. `}
        {missing.length > 0 && `No column stands for: ${missing.join(', ')}. Say below which ones do.`}
        {!unclear && countSentence(lines, clearanceUnit)}
      </output>
      <ScrollBox label="How the table is read">
        <table className={classes.table}>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Read as</th>
              {columns.map(({ heading, role }, at) => (
                // columns have no other name than their place
                // oxlint-disable-next-line react/no-array-index-key
                <th key={at} scope="col">
                  <select
                    className={classes.role}
                    aria-label={`Column ${at + 1} is`}
                    value={role}
                    onChange={(event) => onRole(at, event.currentTarget.value as ColumnRole)}
                  >
                    {Object.entries(columnRoles).map(([value, label]) => (
                      <option key={value} value={value}>
                        {label}
                      </option>
                    ))}
                  </select>
                  <span className={classes.heading}>{heading}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lines.map((line, at) => (
              <Line key={line.number} line={line} place={at + 1} read={read} />
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </div>
  )
}

function Line({ line, place, read }: { line: PastedLine; place: number; read: PastedChart }) {
  const faulty = line.faults.length > 0
  return (
    <tr data-faulty={faulty || undefined}>
      <th scope="row">{place}</th>
      <td className={classes.outcome}>
        {faulty && (
          <ul className={classes.fault}>
            {line.faults.map((fault) => (
              <li key={fault}>
                {fault.charAt(0).toUpperCase()}
                {fault.slice(1)}
              </li>
            ))}
          </ul>
        )}
        {!faulty && line.row && <ReadAs line={line} />}
      </td>
      {read.columns.map(({ role }, at) => (
        // oxlint-disable-next-line react/no-array-index-key
        <td key={at} data-out={role === 'none' || undefined}>
          {line.cells[at]}
        </td>
      ))}
    </tr>
  )
}

function ReadAs({ line: { row, question } }: { line: PastedLine }) {
  if (!row) return null
  const forClass = row.clearanceClass ? `, ${row.clearanceClass}` : ''
  return (
    <>
      {row.overMm} to {row.inclMm} mm, {row.taper}
      {forClass}: {row.reductionMinUm} to {row.reductionMaxUm} µm
      {question && <p className={classes.question}>{question}</p>}
    </>
  )
}

function countSentence(lines: readonly PastedLine[], unit: LengthUnit): string {
  const faulty = lines.filter(({ faults }) => faults.length > 0).length
  const asked = lines.filter(({ question }) => question !== null).length
  const count = lines.length === 1 ? '1 line' : `${lines.length} lines`
  return [
    `${count}, clearances read in ${lengthUnits[unit].name}.`,
    faulty > 0 && (faulty === 1 ? '1 has a fault.' : `${faulty} have faults.`),
    asked > 0 && (asked === 1 ? '1 looks unusual.' : `${asked} look unusual.`),
  ]
    .filter(Boolean)
    .join(' ')
}
