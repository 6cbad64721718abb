import { likelyMeant, parseClearance, type ClearanceAnswer, type Suggestion } from '@shaftbook/bearing/clearance-text'
import { InputError } from '@shaftbook/bearing/input-error'
import { fromUm, parseLength } from '@shaftbook/bearing/units'
import type { LengthUnit } from '../../lib/length-units.ts'
import type { Suggestions } from './service-faults.ts'
import type { Moment, ReadingPair, Sheet } from './sheet.ts'

export type ReadingAnswer = ClearanceAnswer | { kind: 'refused'; sentence: string; suggestions: Suggestion[] }

/** One reading that was typed, where it stands in the sheet and how it reads. */
export interface ReadReading {
  /** Such as `bench.0.A` or `driveSteps.2.B`. */
  key: string
  moment: Moment | 'step'
  /** The number of its step of the drive-up. */
  step: number | null
  row: 'A' | 'B'
  text: string
  meant: boolean
  /** It was mistyped and counts no more. */
  struck: boolean
  answer: ReadingAnswer
}

/** How a typed clearance reads: a number, a question about an unlikely one, or a refusal with its sentence. */
export function readReading(text: string, unit: LengthUnit, boreMm: number | undefined): ReadingAnswer {
  const context = boreMm === undefined ? {} : { boreMm }
  try {
    return parseClearance(text, unit, context)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const suggestions = error.code === 'too-large' ? meantInstead(text, unit, context) : []
    return { kind: 'refused', sentence: error.message, suggestions }
  }
}

function meantInstead(text: string, unit: LengthUnit, context: { boreMm?: number }): Suggestion[] {
  const typed = parseLength(text, unit)
  return likelyMeant(typed.valueUm, typed.unit, context)
}

/** All readings that were typed, in the order in which they are taken: row A and row B in turn. Mounts by feel have none. */
export function typedReadings(sheet: Sheet, boreMm: number | undefined): ReadReading[] {
  if (sheet.method === 'by-feel') return []
  const ofPair = (pair: ReadingPair, at: Pick<ReadReading, 'key' | 'moment' | 'step' | 'struck'>): ReadReading[] =>
    (['A', 'B'] as const).flatMap((row) => {
      const { text, meant } = pair[row]
      if (text.trim() === '') return []
      const answer = readReading(text, sheet.unit, boreMm)
      return [{ ...at, key: `${at.key}.${row}`, row, text: text.trim(), meant, answer }]
    })
  const ofMoment = (moment: Moment): ReadReading[] =>
    sheet[moment].flatMap((pair, at) => ofPair(pair, { key: `${moment}.${at}`, moment, step: null, struck: false }))
  const steps = sheet.driveSteps.flatMap(({ pair, struck }, at) =>
    ofPair(pair, { key: `driveSteps.${at}`, moment: 'step', step: at + 1, struck }),
  )
  return [...ofMoment('found'), ...ofMoment('bench'), ...steps, ...ofMoment('mounted')]
}

/** A question about an unlikely reading is open until it is answered with "this is meant". */
export function isOpenQuestion(reading: Pick<ReadReading, 'meant' | 'answer'> & { struck?: boolean }): boolean {
  return reading.answer.kind === 'ask' && !reading.meant && reading.struck !== true
}

/** A question about a reading: what is unlikely about it, and what may have been meant, as text in the record's unit. */
export interface ReadingQuestion {
  sentence: string
  offers: readonly { label: string; text: string }[]
  /** It can't stand as typed: there is no yes. */
  refused?: boolean
}

/** What the sheet itself asks about a reading that it finds unlikely or refuses; null where it has nothing to offer. */
export function ownQuestion({ answer }: Pick<ReadReading, 'answer'>, unit: LengthUnit): ReadingQuestion | null {
  if (answer.kind === 'clearance') return null
  const refused = answer.kind === 'refused'
  if (refused && answer.suggestions.length === 0) return null
  const offers = answer.suggestions.map(({ label, valueUm }) => ({ label, text: textOfUm(valueUm, unit) }))
  return { sentence: refused ? 'Was something else meant?' : answer.sentence, offers, refused }
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
