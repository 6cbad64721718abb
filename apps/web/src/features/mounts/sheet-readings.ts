import { parseClearance, type ClearanceAnswer } from '@shaftbook/bearing/clearance-text'
import { InputError } from '@shaftbook/bearing/input-error'
import { fromUm, parseLength } from '@shaftbook/bearing/units'
import type { LengthUnit } from '../../lib/length-units.ts'
import type { Suggestions } from './sheet-faults.ts'
import type { Moment, Sheet } from './sheet.ts'

export type ReadingAnswer = ClearanceAnswer | { kind: 'refused'; sentence: string }

/** One reading that was typed, where it stands in the sheet and how it reads. */
export interface ReadReading {
  /** Such as `bench.0.A`. */
  key: string
  moment: Moment
  row: 'A' | 'B'
  text: string
  meant: boolean
  answer: ReadingAnswer
}

/** How a typed clearance reads: a number, a question about an unlikely one, or a refusal with its sentence. */
export function readReading(text: string, unit: LengthUnit, boreMm: number | undefined): ReadingAnswer {
  try {
    return parseClearance(text, unit, boreMm === undefined ? {} : { boreMm })
  } catch (error) {
    if (error instanceof InputError) return { kind: 'refused', sentence: error.message }
    throw error
  }
}

/** All readings that were typed, in the order in which they are taken: row A and row B in turn. Mounts by feel have none. */
export function typedReadings(sheet: Sheet, boreMm: number | undefined): ReadReading[] {
  if (sheet.method === 'by-feel') return []
  return (['bench', 'mounted'] as const).flatMap((moment) =>
    sheet[moment].flatMap((pair, at) =>
      (['A', 'B'] as const).flatMap((row) => {
        const { text, meant } = pair[row]
        if (text.trim() === '') return []
        const key = `${moment}.${at}.${row}`
        return [{ key, moment, row, text: text.trim(), meant, answer: readReading(text, sheet.unit, boreMm) }]
      }),
    ),
  )
}

/** A question about an unlikely reading is open until it is answered with "this is meant". */
export function isOpenQuestion(reading: Pick<ReadReading, 'meant' | 'answer'>): boolean {
  return reading.answer.kind === 'ask' && !reading.meant
}

/** A question about a reading: what is unlikely about it, and what may have been meant, as text in the record's unit. */
export interface ReadingQuestion {
  sentence: string
  offers: readonly { label: string; text: string }[]
}

/** What the sheet itself asks about a reading that it finds unlikely; null where it does not. */
export function ownQuestion({ answer }: ReadReading, unit: LengthUnit): ReadingQuestion | null {
  if (answer.kind !== 'ask') return null
  const offers = answer.suggestions.map(({ label, valueUm }) => ({ label, text: textOfUm(valueUm, unit) }))
  return { sentence: answer.sentence, offers }
}

/** What the service asked about a reading that it refused; null where it offered nothing. */
export function serviceQuestion(
  fault: string | undefined,
  suggestions: Suggestions[string] | undefined,
  unit: LengthUnit,
): ReadingQuestion | null {
  if (fault === undefined || !suggestions || suggestions.length === 0) return null
  const offers = suggestions.map(({ label, typedValue, typedUnit }) => {
    const { valueUm } = parseLength(`${typedValue} ${typedUnit}`, unit)
    return { label, text: textOfUm(valueUm, unit) }
  })
  return { sentence: fault, offers }
}

/** The typed text that stands for a suggested clearance in the unit of the record. */
export function textOfUm(um: number, unit: LengthUnit): string {
  return String(Number(fromUm(um, unit).toFixed(6)))
}
