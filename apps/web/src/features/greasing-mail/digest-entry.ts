import type { MailDigest } from '@shaftbook/contract/greasing-mail'
import { formatDay } from '../../lib/format-day.ts'

export type DigestEntry = Pick<MailDigest, 'weekdays' | 'hour' | 'areaIds' | 'alsoWhenNothing'>

/** Days of the week by ISO 8601, Monday first. */
export const weekdayWords = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const

export function entryOf({ weekdays, hour, areaIds, alsoWhenNothing }: MailDigest): DigestEntry {
  return { weekdays, hour, areaIds, alsoWhenNothing }
}

/** With the value taken in, or taken out where it was in. */
export function toggled<Value>(values: readonly Value[], value: Value): Value[] {
  return values.includes(value) ? values.filter((one) => one !== value) : [...values, value]
}

/** Whether the two say the same, whatever the order of days and areas. */
export function sameEntry(a: DigestEntry, b: DigestEntry): boolean {
  const sorted = (values: readonly (string | number)[]): string =>
    values
      .map(String)
      .sort((x, y) => (x < y ? -1 : 1))
      .join()
  return (
    a.hour === b.hour &&
    a.alsoWhenNothing === b.alsoWhenNothing &&
    sorted(a.weekdays) === sorted(b.weekdays) &&
    sorted(a.areaIds) === sorted(b.areaIds)
  )
}

/** "06:00" of an hour. */
export function hourWords(hour: number): string {
  return `${String(hour).padStart(2, '0')}:00`
}

/** How it stands with the mails, in a sentence. */
export function digestSentence(digest: MailDigest): string {
  const { weekdays, to, lastSentOn } = digest
  const last = lastSentOn === null ? '' : ` The last one was worked off on ${formatDay(lastSentOn)}.`
  if (weekdays.length === 0) return `You get no mail: choose the days on which one goes to ${to}.${last}`
  return `Mails go to ${to}.${last}`
}
