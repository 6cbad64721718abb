import { addDays, dayNumber, type PlainDate } from '@shaftbook/bearing/plain-date'

/** Six years. */
export const registerDays = 2191

const msPerDay = 86_400_000

/** Days are counted from 0, on which the register began, to `registerDays`, which is the day of seeding and still empty. */
export interface Calendar {
  today: PlainDate
  /** A moment of a day, minutes after midnight (UTC). */
  at(day: number, minutes: number): Date
  date(day: number): PlainDate
  /** 0 is Monday. */
  weekday(day: number): number
  /** The yearly stop, two weeks in May, with no harvest to wait for. */
  isStop(day: number): boolean
  /** How much more than usual the terminal moves on that day. */
  season(day: number): number
}

const seasonByMonth = [0.75, 0.75, 0.85, 0.9, 0.7, 0.95, 1.4, 1.55, 1.45, 1.2, 0.9, 0.7]

export function makeCalendar(today: PlainDate): Calendar {
  const first = dayNumber(today) - registerDays
  // worked out once: every machine asks for every day
  const days = Array.from({ length: registerDays + 1 }, (_, day) => describeDay(addDays(today, day - registerDays)))
  const dayAt = (day: number): Day => {
    const found = days[day]
    if (found === undefined) throw new RangeError(`Day ${day} is not a day of the register.`)
    return found
  }
  return {
    today,
    at: (day, minutes) => new Date((first + day) * msPerDay + Math.round(minutes * 60_000)),
    date: (day) => dayAt(day).date,
    // 1970-01-01 was a Thursday
    weekday: (day) => (first + day + 3) % 7,
    isStop: (day) => dayAt(day).isStop,
    season: (day) => dayAt(day).season,
  }
}

interface Day {
  date: PlainDate
  isStop: boolean
  season: number
}

function describeDay(date: PlainDate): Day {
  const season = seasonByMonth[Number(date.slice(5, 7)) - 1]
  if (season === undefined) throw new RangeError(`${date} has no season.`)
  return { date, isStop: /-05-(1\d|2[0-3])$/.test(date), season }
}
