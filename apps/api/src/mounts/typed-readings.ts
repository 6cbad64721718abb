import { parseClearance, type ClearanceAnswer } from '@shaftbook/bearing/clearance-text'
import { InputError } from '@shaftbook/bearing/input-error'
import { fromUm, parseLength } from '@shaftbook/bearing/units'
import type { NewReading, Reading } from '@shaftbook/contract/mounts'
import type { FieldFault, ProblemCode } from '@shaftbook/contract/problem'
import { DomainError } from '../domain-error.ts'

interface Fault extends FieldFault {
  readonly code: ProblemCode
}

/** What a reading is refused for, the plainest first: one refusal names every field that has the same fault. */
const faultOrder: readonly ProblemCode[] = [
  'request-invalid',
  'reading-out-of-range',
  'units-mixed',
  'reading-unlikely',
]

/**
 * Reads the typed clearances: comma or point, 0 to 2 mm, all in one unit. One that is probably a slip is asked about,
 * with what may have been meant, unless it was confirmed. R-UNIT.
 */
export function takeReadings(readings: readonly NewReading[], boreMm: number): Reading[] {
  const faults = stepFaults(readings)
  const taken = readings.flatMap((reading, index): Reading[] => {
    const path = `readings.${index}.typedValue`
    const answer = readOne(reading, boreMm, path, faults)
    if (!answer) return []
    if (answer.kind === 'ask' && !reading.confirmed && !reading.struck) faults.push(question(path, answer))
    const { moment, step, row, typedValue, struck } = reading
    const number = readings.slice(0, index).filter((other) => placeOf(other) === placeOf(reading)).length + 1
    return [{ moment, step, row, number, clearanceUm: answer.valueUm, typedValue, typedUnit: answer.unit, struck }]
  })
  const [first] = taken
  for (const [index, reading] of taken.entries()) {
    if (first && reading.typedUnit !== first.typedUnit) faults.push(mixed(index, reading, first))
  }
  refuse(faults)
  return taken
}

/** Readings are numbered within the same row of the same set. */
function placeOf({ moment, step, row }: NewReading): string {
  return `${moment} ${step ?? ''} ${row}`
}

function stepFaults(readings: readonly NewReading[]): Fault[] {
  return readings.flatMap(({ moment, step }, index): Fault[] => {
    if ((moment === 'step') === (step !== null)) return []
    const message =
      moment === 'step'
        ? 'Say at which step of the drive-up this was read.'
        : 'Only a reading of the drive-up belongs to a step: leave the step out.'
    return [{ code: 'request-invalid', path: `readings.${index}.step`, message }]
  })
}

function readOne(reading: NewReading, boreMm: number, path: string, faults: Fault[]): ClearanceAnswer | undefined {
  try {
    return parseClearance(reading.typedValue, reading.typedUnit, { boreMm, field: path })
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const unreadable = error.code === 'malformed' || error.code === 'unknown-unit'
    faults.push({ code: unreadable ? 'request-invalid' : 'reading-out-of-range', path, message: error.message })
    return undefined
  }
}

function question(path: string, answer: Extract<ClearanceAnswer, { kind: 'ask' }>): Fault {
  const suggestions = answer.suggestions.map(({ label, valueUm }) => {
    const { unit } = parseLength(label, answer.unit)
    return { label, typedValue: String(fromUm(valueUm, unit)), typedUnit: unit }
  })
  return { code: 'reading-unlikely', path, message: answer.sentence, suggestions }
}

function mixed(index: number, reading: Reading, first: Reading): Fault {
  const message = `This reading is in ${reading.typedUnit}, the first one in ${first.typedUnit}: enter all readings of a record in one unit.`
  return { code: 'units-mixed', path: `readings.${index}.typedValue`, message }
}

function refuse(faults: readonly Fault[]): void {
  const code = faultOrder.find((candidate) => faults.some((fault) => fault.code === candidate))
  if (code === undefined) return
  const fields = faults.filter((fault) => fault.code === code).map(({ code: _code, ...field }) => field)
  throw new DomainError(code, fields[0]?.message ?? '', fields)
}
