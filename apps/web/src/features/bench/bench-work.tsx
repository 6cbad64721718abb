import { Button } from '@mantine/core'
import { InputError } from '@shaftbook/bearing/input-error'
import type { Calculation, CalculationResult } from '@shaftbook/contract/calculations/calculation'
import { useMemo, useRef, useState, type FormEvent } from 'react'
import { useUnits } from '../../lib/units.tsx'
import { noMeasure, type MeasureText } from '../../ui/measure-text.ts'
import { readEntry, searchOf, startEntry, type BenchSearch } from './bench-entry.ts'
import { BenchField } from './bench-field.tsx'
import { BenchResult } from './bench-result.tsx'
import classes from './bench.module.css'

interface BenchWorkProps {
  calculation: Calculation
  /** The numbers of the address. */
  search: BenchSearch
  /** Puts numbers into the address. */
  onSearch: (search: BenchSearch) => void
}

/** The form of one calculation and its result. The address holds the numbers, so the result can be sent as a link. */
export function BenchWork({ calculation, search, onSearch }: BenchWorkProps) {
  const { unit } = useUnits()
  const { input: fields } = calculation
  const form = useRef<HTMLFormElement>(null)
  const resultHead = useRef<HTMLHeadingElement>(null)
  const [entry, setEntry] = useState(() => startEntry(fields, search, unit))
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map())
  const outcome = useMemo(() => worked(calculation, search), [calculation, search])
  const read = readEntry(fields, entry, unit)
  const stale = outcome.result !== null && !sameSearch(searchOf(read.input), search)
  const shownFaults = faults.size > 0 ? faults : outcome.faults

  const change = (name: string, value: MeasureText) => {
    setEntry((old) => ({ ...old, [name]: value }))
    setFaults((old) => new Map([...old].filter(([key]) => key !== name)))
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const next = searchOf(read.input)
    const found = read.faults.size > 0 ? read.faults : worked(calculation, next).faults
    setFaults(found)
    const first = Object.keys(fields).find((name) => found.has(name))
    if (first !== undefined) return form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus()
    onSearch(next)
    return requestAnimationFrame(() => resultHead.current?.focus())
  }
  const clear = () => {
    setEntry(startEntry(fields, {}, unit))
    setFaults(new Map())
    onSearch({})
  }
  const needed = Object.entries(fields).filter(([, { required }]) => required)
  const known = Object.entries(fields).filter(([, { required }]) => !required)
  const drawn = ([name, field]: (typeof needed)[number]) => (
    <BenchField
      key={name}
      name={name}
      field={field}
      value={entry[name] ?? noMeasure}
      fault={shownFaults.get(name)}
      onChange={(value) => change(name, value)}
    />
  )
  return (
    <div className={classes.work}>
      <form ref={form} className={classes.form} onSubmit={submit} noValidate aria-label={calculation.title}>
        <div className={classes.fields}>{needed.map(drawn)}</div>
        {known.length > 0 && (
          <fieldset className={classes.known}>
            <legend className={classes.legend}>If it is known</legend>
            <div className={classes.fields}>{known.map(drawn)}</div>
          </fieldset>
        )}
        <div className={classes.acts}>
          <Button type="submit">Work it out</Button>
          <Button variant="default" onClick={clear}>
            Clear
          </Button>
        </div>
      </form>
      <BenchResult ref={resultHead} calculation={calculation} result={outcome.result} stale={stale} />
    </div>
  )
}

interface Outcome {
  result: CalculationResult | null
  faults: ReadonlyMap<string, string>
}

const nothingYet: Outcome = { result: null, faults: new Map() }

/** Works out what the address says; what the formula refuses is a fault of its field. */
function worked(calculation: Calculation, search: BenchSearch): Outcome {
  if (Object.keys(search).length === 0) return nothingYet
  const { input, faults } = readEntry(calculation.input, startEntry(calculation.input, search, 'um'), 'um')
  if (faults.size > 0) return { result: null, faults }
  try {
    return { result: calculation.run(input), faults }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { result: null, faults: new Map([[error.field.replace(/\[.*$/, ''), error.message]]) }
  }
}

function sameSearch(one: BenchSearch, other: BenchSearch): boolean {
  const names = new Set([...Object.keys(one), ...Object.keys(other)])
  return [...names].every((name) => String(one[name] ?? '') === String(other[name] ?? ''))
}
