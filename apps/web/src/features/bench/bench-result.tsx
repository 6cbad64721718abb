import type { Calculation, CalculationResult } from '@shaftbook/contract/calculations/calculation'
import type { Figure, Figures } from '@shaftbook/contract/calculations/figure'
import type { ReactNode, Ref } from 'react'
import { useUnits } from '../../lib/units.tsx'
import { DefinitionList } from '../../ui/definition-list.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import classes from './bench.module.css'
import { figureText } from './figure-text.ts'

interface BenchResultProps {
  calculation: Calculation
  result: CalculationResult | null
  /** The numbers of the form are others than those of the result. */
  stale: boolean
  ref: Ref<HTMLHeadingElement>
}

/** What came out, what to keep in mind, and where it comes from. */
export function BenchResult({ calculation, result, stale, ref }: BenchResultProps) {
  return (
    <section className={classes.result} aria-labelledby="bench-result">
      <h2 id="bench-result" ref={ref} tabIndex={-1} className={classes.title}>
        Result
      </h2>
      {result === null ? (
        <p className={classes.soft}>
          Enter the numbers and work it out. Nothing is stored; the address keeps them, so that it can be sent.
        </p>
      ) : (
        <>
          {stale && <p className={classes.stale}>The numbers were changed since: work it out again.</p>}
          <Outcome calculation={calculation} result={result} />
        </>
      )}
    </section>
  )
}

function Outcome({ calculation, result }: { calculation: Calculation; result: CalculationResult }) {
  const given = Object.entries(calculation.result).filter(([name]) => isGiven(result[name]))
  const single = given.filter(([, figure]) => figure.kind !== 'rows' && figure.kind !== 'texts')
  const long = given.filter(([, figure]) => figure.kind === 'rows' || figure.kind === 'texts')
  return (
    <>
      {result.sentence && <p className={classes.sentence}>{result.sentence}</p>}
      {single.length > 0 && (
        <div className={classes.figures}>
          <DefinitionList
            items={single.map(([name, figure]) => ({
              label: figure.title,
              value: <FigureValue figure={figure} value={result[name]} />,
            }))}
          />
        </div>
      )}
      {long.map(([name, figure]) => (
        <LongFigure key={name} figure={figure} value={result[name]} />
      ))}
      {result.cautions.length > 0 && <Sentences title="Keep in mind" sentences={result.cautions} />}
      <h3 className={classes.subtitle}>Where it comes from</h3>
      <DefinitionList
        items={[
          { label: 'Source', value: sourceText(result) },
          ...(result.source.certainty === null ? [] : [{ label: 'Certainty', value: result.source.certainty }]),
          { label: 'Rule', value: result.rule },
        ]}
      />
    </>
  )
}

function FigureValue({ figure, value }: { figure: Figure; value: unknown }): ReactNode {
  const { unit } = useUnits()
  switch (figure.kind) {
    case 'number':
      return <span>{figureText(value as number, figure.unit, figure.digits, unit)}</span>
    case 'numbers':
      return (value as number[]).map((each) => figureText(each, figure.unit, figure.digits, unit)).join(', ')
    case 'yes-no':
      return value ? 'yes' : 'no'
    case 'words':
      return isVerdict(value) ? <VerdictMark verdict={value} size="s" /> : figure.words[value as string]
    default:
      return <span>{String(value)}</span>
  }
}

function LongFigure({ figure, value }: { figure: Figure; value: unknown }) {
  if (figure.kind === 'texts') return <Sentences title={figure.title} sentences={value as string[]} />
  if (figure.kind !== 'rows') return null
  return (
    <>
      <h3 className={classes.subtitle}>{figure.title}</h3>
      <Rows columns={figure.columns} rows={value as readonly Record<string, unknown>[]} />
    </>
  )
}

interface RowsProps {
  columns: Figures
  rows: readonly Record<string, unknown>[]
}

/** Up to three columns are a table; of more the first names the row, and the last is a note to it. */
function Rows({ columns, rows }: RowsProps) {
  const shown = Object.entries(columns)
  if (shown.length <= 3) return <ResultTable columns={columns} rows={rows} />
  const part = (row: Record<string, unknown>, [name, figure]: (typeof shown)[number]) =>
    isGiven(row[name]) ? [<FigureValue key={name} figure={figure} value={row[name]} />] : []
  return (
    <DefinitionList
      items={rows.map((row) => ({
        label: String(Object.values(row)[0]),
        value: <span className={classes.parts}>{shown.slice(1, -1).flatMap((column) => part(row, column))}</span>,
        note: shown.slice(-1).flatMap((column) => part(row, column)),
      }))}
    />
  )
}

function ResultTable({ columns, rows }: RowsProps) {
  const shown = Object.entries(columns)
  return (
    <table className={classes.table}>
      <thead>
        <tr>
          {shown.map(([name, { title }]) => (
            <th key={name} scope="col">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={JSON.stringify(row)}>
            {shown.map(([name, figure]) => (
              <td key={name}>{isGiven(row[name]) ? <FigureValue figure={figure} value={row[name]} /> : '–'}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Sentences({ title, sentences }: { title: string; sentences: readonly string[] }) {
  return (
    <>
      <h3 className={classes.subtitle}>{title}</h3>
      <ul className={classes.sentences}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  )
}

function sourceText({ source }: CalculationResult): string {
  const { title, edition, row } = source
  return [title, edition && `edition ${edition}`, row].filter(Boolean).join(', ')
}

function isGiven(value: unknown): boolean {
  return value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0)
}

const verdicts = ['inside', 'under', 'over', 'not-proven', 'enough', 'too-small'] as const

function isVerdict(value: unknown): value is (typeof verdicts)[number] {
  return verdicts.some((verdict) => verdict === value)
}
