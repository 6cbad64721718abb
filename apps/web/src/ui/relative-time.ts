const minute = 60_000
const hour = 60 * minute
const day = 24 * hour

const steps = [
  { below: hour, unit: 'minute', size: minute },
  { below: day, unit: 'hour', size: hour },
  { below: 14 * day, unit: 'day', size: day },
  { below: 60 * day, unit: 'week', size: 7 * day },
  { below: 730 * day, unit: 'month', size: 30.4375 * day },
  { below: Infinity, unit: 'year', size: 365.25 * day },
] as const

/** How far an instant lies from `now` in one unit of time: "3 days ago", "in 2 weeks", "just now" under a minute. */
export function relativeTime(instant: Date, now: Date): string {
  const gap = instant.getTime() - now.getTime()
  if (Math.abs(gap) < minute) return 'just now'
  const step = steps.find(({ below }) => Math.abs(gap) < below) ?? steps[steps.length - 1]!
  return new Intl.RelativeTimeFormat('en-GB', { numeric: 'always' }).format(Math.trunc(gap / step.size), step.unit)
}
