import type { MeterBoardItem } from '@shaftbook/contract/meter-board'
import type { MeterLine } from '@shaftbook/contract/meter-readings'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'
import { cellLines, separatorOf } from './paste-cells.ts'

/** What is typed of many meters, as the device keeps it until every line is taken. */
export interface MeterSheet {
  /** When they were read, by the clock of the plant; empty: now. */
  readAt: string
  /** By the id of the meter. An id of its own makes a second sending the same reading. */
  lines: Record<string, { id: string; shown: string }>
  pasted: string
  /** The ids of pasted lines, by their words. */
  pastedIds: Record<string, string>
}

export type SentLine = z.input<typeof MeterLine>

const largestHours = 1_000_000
export const unreadable = 'Enter the hours as the meter shows them, like 12345.6.'

/** The hours of a field; undefined where it is no number that a meter shows. */
export function shownHours(text: string): number | undefined {
  const hours = parseNumber(text)
  return hours === undefined || hours < 0 || hours > largestHours ? undefined : hours
}

/** The filled lines as the service takes them, and those that no number can be made of. */
export function filledLines(
  lines: MeterSheet['lines'],
  readAt: string,
): { ready: SentLine[]; unreadable: readonly string[] } {
  const filled = Object.entries(lines).filter(([, { shown }]) => shown.trim() !== '')
  const ready = filled.flatMap(([meterId, { id, shown }]) => {
    const hours = shownHours(shown)
    return hours === undefined ? [] : [{ id, meterId, readAt, shownHours: hours }]
  })
  const faulty = filled.filter(([, { shown }]) => shownHours(shown) === undefined).map(([meterId]) => meterId)
  return { ready, unreadable: faulty }
}

export interface PastedLine {
  /** Where it stands in the text, from 1. */
  readonly number: number
  readonly tag: string
  readonly hoursText: string
  readonly hours: number | undefined
  /** Names the line for as long as its words stay the same. */
  readonly key: string
}

/** Lines of tag and hours from a spreadsheet; a first line without a number is its heading. Further columns are left out. */
export function pastedLines(text: string): PastedLine[] {
  const seen = new Map<string, number>()
  return cellLines(text, separatorOf(text))
    .map(({ number, cells }) => {
      const [tag = '', hoursText = ''] = cells
      const words = `${tag}\t${hoursText}`
      const times = (seen.get(words) ?? 0) + 1
      seen.set(words, times)
      return { number, tag, hoursText, hours: shownHours(hoursText), key: times === 1 ? words : `${words}\t${times}` }
    })
    .filter(({ hoursText }, at) => at > 0 || /\d/.test(hoursText))
}

/** What is left of a pasted text once some of its lines are taken. */
export function withoutLines(text: string, numbers: ReadonlySet<number>): string {
  return text
    .split(/\r?\n/)
    .filter((_line, at) => !numbers.has(at + 1))
    .join('\n')
}

/** A question about a number that is likely a slip; the service judges it. R-HOURS. */
export function askAbout(meter: MeterBoardItem, text: string, readAt: Date): string | undefined {
  const hours = shownHours(text)
  const { lastShownHours, lastReadAt, rolloverAtHours } = meter
  if (hours === undefined || lastShownHours === null || lastReadAt === null) return undefined
  const passed = (readAt.getTime() - Date.parse(lastReadAt)) / 3_600_000
  if (passed < 0) return undefined
  if (hours < lastShownHours && rolloverAtHours === null)
    return 'Less than last time: was the meter exchanged? Then enter that at the meter.'
  if (hours - lastShownHours > passed + 1) return 'More than the hours since the last reading: check the number.'
  return undefined
}
