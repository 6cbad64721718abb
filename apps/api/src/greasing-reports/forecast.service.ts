import { addDays, dayNumber } from '@shaftbook/bearing/plain-date'
import { assumedMinutesPerStop, type GreasingForecast } from '@shaftbook/contract/greasing-reports'
import { plantDay } from '@shaftbook/contract/time-zone'
import type { SiteMembership } from '../access/session.ts'
import type { Context } from '../context.ts'
import type { Scope } from '../db/database.ts'
import { loadSite } from '../bookkeeping/site.ts'
import { forecastRows, machineUsages, type ForecastRow } from './forecast.store.ts'

interface Question {
  readonly scope: Scope
  readonly site: SiteMembership
  readonly weeks: number
  readonly areaId?: string | undefined
}

/** What the coming weeks ask for. Three statements, whatever the number of positions. */
export async function greasingForecast({ db, now }: Context, question: Question): Promise<GreasingForecast> {
  const { scope, site, weeks, areaId } = question
  const { timeZone } = site
  const day = (at: Date): string => plantDay(at, timeZone)
  const today = day(now())
  const monday = mondayOf(today)
  const period = {
    siteId: scope.siteId,
    timeZone,
    now: now(),
    areaId,
    today,
    monday,
    until: addDays(monday, weeks * 7 - 1),
  }
  return await db.readSite(scope, async (sql) => {
    const { settings } = await loadSite({ scope, sql }, now())
    const rows = await forecastRows(sql, period, await machineUsages(sql, period, day))
    const minutesPerStop = settings.minutesPerStop ?? assumedMinutesPerStop
    return {
      today,
      weeks: Array.from({ length: weeks }, (_, week) => {
        const inWeek = rows.filter((row) => row.week === week)
        const stops = total(inWeek, 'stops')
        const startsOn = addDays(monday, week * 7)
        return {
          startsOn,
          endsOn: addDays(startsOn, 6),
          stops,
          waiting: total(inWeek, 'waiting'),
          hours: (stops * minutesPerStop) / 60,
          grams: byGrease(inWeek).map(({ id, grams }) => ({ greaseId: id, grams })),
        }
      }),
      greases: byGrease(rows),
      tasks: [...new Set(rows.map(({ task }) => task))].sort().map((task) => ({
        task,
        stops: total(
          rows.filter((row) => row.task === task),
          'stops',
        ),
      })),
      minutesPerStop,
      minutesAssumed: settings.minutesPerStop === null,
      estimatedStops: total(rows, 'estimated'),
    }
  })
}

/** The Monday of the week that a day lies in. Day 0 of the count, 1970-01-01, was a Thursday. */
function mondayOf(today: string): string {
  return addDays(today, -((dayNumber(today) + 3) % 7))
}

function total(rows: readonly ForecastRow[], field: 'stops' | 'waiting' | 'estimated'): number {
  return rows.reduce((sum, row) => sum + row[field], 0)
}

/** Grams of each grease, the most first. */
function byGrease(rows: readonly ForecastRow[]): GreasingForecast['greases'] {
  const greases = new Map<string, { id: string; name: string; grams: number }>()
  for (const { greaseId, greaseName, grams } of rows) {
    if (greaseId === null || greaseName === null) continue
    const known = greases.get(greaseId) ?? { id: greaseId, name: greaseName, grams: 0 }
    greases.set(greaseId, { ...known, grams: known.grams + grams })
  }
  return [...greases.values()].sort((a, b) => b.grams - a.grams || a.name.localeCompare(b.name))
}
