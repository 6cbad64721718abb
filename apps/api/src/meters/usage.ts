import { averageHoursPerDay } from '@shaftbook/bearing/due'

/** Readings of this many days back give the average hours a day (R-CAL). */
export const usageDays = 90
/** Readings closer together than this say too little: the register's own estimate is taken. */
const leastUsageDays = 7
export const msPerDay = 86_400_000

export interface UsageReading {
  readonly readAt: Date
  readonly totalHours: number
}

/**
 * Average running hours a day between the first and the last reading of the last 90 days, else what the register says of
 * the machine; 0 to 24. `day` gives the day of the plant. R-CAL.
 */
export function usageOf(
  first: UsageReading | undefined,
  last: UsageReading | undefined,
  registeredHoursPerDay: number,
  day: (at: Date) => string,
): number {
  if (!first || !last || last.readAt.getTime() - first.readAt.getTime() < leastUsageDays * msPerDay) {
    return registeredHoursPerDay
  }
  const [from, to] = [day(first.readAt), day(last.readAt)]
  // whole days are shorter than the time from a reading in the morning to one at night
  const most = 24 * Math.round((Date.parse(to) - Date.parse(from)) / msPerDay)
  const runHours = Math.min(last.totalHours - first.totalHours, most)
  return averageHoursPerDay({ date: from, runHours: 0 }, { date: to, runHours })
}
