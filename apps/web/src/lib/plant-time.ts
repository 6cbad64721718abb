/** A moment as the plant's clock shows it, in the form of a date-and-time field: `2026-11-24T14:05`. */
export function plantClock(at: Date, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at)
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((each) => each.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}`
}

/**
 * The instant at which the plant's clock shows a text such as `2026-11-24T14:05`, as ISO 8601; undefined when the text is no
 * date and time. An hour that the clock skips in spring is taken as the one after it.
 */
export function plantInstant(text: string, timeZone: string): string | undefined {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(text)) return undefined
  const shown = Date.parse(`${text}:00Z`)
  if (Number.isNaN(shown)) return undefined
  const offsetAt = (ms: number): number => Date.parse(`${plantClock(new Date(ms), timeZone)}:00Z`) - ms
  const guess = shown - offsetAt(shown)
  return new Date(shown - offsetAt(guess)).toISOString()
}
