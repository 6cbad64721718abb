import { chartContradictions } from '@shaftbook/bearing/chart-contradictions'
import { changeMakerChart, createMakerChart, type MakerChart } from '@shaftbook/contract/maker-charts'
import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useRef, useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { isLengthUnit, lengthUnitKeys, lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import { useUnits } from '../../lib/units.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { AppLink } from '../../ui/link.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { ChartPaste } from './chart-paste-panel.tsx'
import type { PastedRow } from './chart-paste.ts'
import { ChartRowsTable } from './chart-rows-table.tsx'
import { chartQuestions, isFilled, nextRow, readChartRows, typedRow, type TypedRow } from './chart-rows.ts'
import { ChartView } from './chart-view.tsx'
import classes from './record-form.module.css'
import { faultsOf, saidAtField } from './refusal.ts'

const headFields = [
  { name: 'maker', label: 'Maker', required: true },
  { name: 'document', label: 'Document', required: true },
  { name: 'edition', label: 'Edition', required: true },
  { name: 'page', label: 'Page', required: false },
] as const
type ReadRows = ReturnType<typeof readChartRows>['rows']
type Head = Record<(typeof headFields)[number]['name'], string>

interface ChartFormProps {
  /** The chart that is changed. */
  chart?: MakerChart
  /** The chart whose next edition is entered, with its rows to change. */
  before?: MakerChart
}

/** Enters a maker's chart or its next edition, or changes one; of a chart that signed records went by only the page. */
export function ChartForm({ chart, before }: ChartFormProps) {
  const { code } = useSite()
  const units = useUnits()
  const client = useQueryClient()
  const navigate = useNavigate()
  const notice = useNotice()
  const form = useRef<HTMLFormElement>(null)
  const [id] = useState(() => chart?.id ?? newId())
  const [head, setHead] = useState<Head>(() => headOf(chart ?? before, before !== undefined))
  const [unit, setUnit] = useState<LengthUnit>(units.unit)
  const [rows, setRows] = useState<readonly TypedRow[]>(
    () => startRows(chart, before)?.map((row) => typedRow(row, units.unit)) ?? [nextRow(undefined)],
  )
  const [changed, setChanged] = useState(false)
  const [asked, setAsked] = useState<{ questions: string[]; rows: ReadRows } | null>(null)
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map())
  const shown = chart ?? before
  const back = shown ? paths.chart(code, shown.id) : paths.setupPart(code, 'charts')
  const stays = chart?.used ?? false

  const sending = useMutation({
    mutationFn: (read: ReadRows) => {
      const page = head.page.trim() || null
      const body = { ...head, page, rows: read }
      return chart
        ? call(changeMakerChart, { params: { site: code, id }, version: chart.version, body: stays ? { page } : body })
        : call(createMakerChart, { params: { site: code }, body: { id, replacesId: before?.id ?? null, ...body } })
    },
    onSuccess: async () => {
      setChanged(false)
      await invalidateSite(client, code)
      notice.done(chart ? 'The chart is changed. Records judged by it stay as they are.' : 'The chart is entered.')
      void navigate({ href: paths.chart(code, id), ignoreBlocker: true })
    },
    onError: (error) => showFaults(faultsOf(error)),
  })
  const showFaults = (found: ReadonlyMap<string, string>) => {
    setFaults(found)
    const [first] = found.keys()
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus()
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const missing = headFields.filter(({ name, required }) => required && head[name].trim() === '')
    const read = readChartRows(rows, unit)
    const clashes = read.faults.size === 0 ? chartContradictions(read.rows) : []
    const found = new Map([
      ...missing.map(({ name }) => [name, 'is missing'] as const),
      ...read.faults,
      ...clashes.map(({ row, field, message }) => [`rows.${row}.${field}`, message] as const),
    ])
    showFaults(found)
    if (found.size > 0) return
    if (stays) return sending.mutate(read.rows)
    const questions = chartQuestions(read.rows)
    if (questions.length > 0) setAsked({ questions, rows: read.rows })
    else sending.mutate(read.rows)
  }
  const touch = <T,>(set: (value: T) => void) => {
    return (value: T) => {
      setChanged(true)
      set(value)
    }
  }
  const take = (pasted: readonly PastedRow[], keepOthers: boolean) => {
    const added = pasted.map((row) => typedRow({ id: newId(), ...row }, unit))
    setFaults(new Map())
    touch(setRows)([...(keepOthers ? rows.filter(isFilled) : []), ...added])
  }
  return (
    <form ref={form} className={classes.form} data-wide onSubmit={submit} noValidate>
      <LeaveGuard when={changed}>The chart is not saved yet. What you typed is lost when you leave.</LeaveGuard>
      <div className={classes.fields}>
        {headFields.map(({ name, label, required }) => (
          <TextInput
            key={name}
            name={name}
            label={label}
            withAsterisk={required}
            disabled={stays && name !== 'page'}
            autoComplete="off"
            value={head[name]}
            error={faults.get(name)}
            onChange={(event) => touch(setHead)({ ...head, [name]: event.currentTarget.value })}
          />
        ))}
        {!stays && (
          <NativeSelect
            label="Clearances below are in"
            description="Of the whole chart; changing it converts nothing"
            value={unit}
            onChange={(event) => {
              if (isLengthUnit(event.currentTarget.value)) touch(setUnit)(event.currentTarget.value)
            }}
            data={lengthUnitKeys.map((key) => ({ value: key, label: lengthUnits[key].name }))}
          />
        )}
      </div>
      {stays && chart ? (
        <ChartView rows={chart.rows} />
      ) : (
        <>
          <ChartPaste onTake={take} />
          <ChartRowsTable rows={rows} unit={unit} faults={faults} onChange={touch(setRows)} />
        </>
      )}
      {sending.isError && !saidAtField(sending.error) && (
        <p className={classes.failed} role="alert">
          {sending.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={sending.isPending}>
          {stays ? 'Change the page' : chart ? 'Change the chart' : 'Enter the chart'}
        </Button>
        <Button component={AppLink} href={back} variant="default">
          Go back
        </Button>
      </div>
      <Confirm
        opened={asked !== null}
        title="Are these rows meant?"
        confirmLabel="Yes, they are meant"
        onCancel={() => setAsked(null)}
        onConfirm={() => {
          if (asked) sending.mutate(asked.rows)
          setAsked(null)
        }}
      >
        <ul className={classes.questions}>
          {asked?.questions.map((question) => (
            <li key={question}>{question}</li>
          ))}
        </ul>
      </Confirm>
    </form>
  )
}

/** What the fields at the top show at first; a next edition is named by the person. */
function headOf(chart: MakerChart | undefined, nextEdition: boolean): Head {
  return {
    maker: chart?.maker ?? '',
    document: chart?.document ?? '',
    edition: nextEdition ? '' : (chart?.edition ?? ''),
    page: chart?.page ?? '',
  }
}

function startRows(chart: MakerChart | undefined, before: MakerChart | undefined): MakerChart['rows'] | undefined {
  return chart?.rows ?? before?.rows.map((row) => ({ ...row, id: newId() }))
}
