import type { ForecastWeek, GreasingForecast } from '@shaftbook/contract/greasing-reports'
import { formatCount } from '../../lib/format-count.ts'

/** How far the forecast can look, in weeks, as the address says it. */
export const forecastPeriods = ['4', '8', '13'] as const

/** How many weeks are meant; 8 where nothing was said. */
export function weeksOf(text: (typeof forecastPeriods)[number] | undefined): 4 | 8 | 13 {
  return ({ '4': 4, '8': 8, '13': 13 } as const)[text ?? '8']
}

/** Hours of work to a tenth: "35.3". */
export function hourText(hours: number): string {
  return (Math.round(hours * 10) / 10).toFixed(1)
}

const stopsText = (count: number): string => `${formatCount(count)} ${count === 1 ? 'stop' : 'stops'}`

/** What the chart of work shows, in sentences with its numbers. */
export function workSentence(forecast: GreasingForecast): string {
  const { weeks, minutesPerStop, minutesAssumed, estimatedStops } = forecast
  const stops = sum(weeks, (week) => week.stops)
  const hours = sum(weeks, (week) => week.hours)
  if (stops === 0) return `Nothing is due in these ${weeks.length} weeks.`
  const said = minutesAssumed ? 'assumed: the site has not said how long one takes' : 'as the site says'
  const waiting = sum(weeks, (week) => week.waiting)
  return [
    `${stopsText(stops)} in ${weeks.length} weeks, ${hourText(hours)} h at ${minutesPerStop} min a stop (${said}).`,
    waiting === 0 ? '' : `${formatCount(waiting)} of them ${waiting === 1 ? 'was' : 'were'} due before today.`,
    estimatedStops === 0 ? '' : `The day of ${formatCount(estimatedStops)} follows from average run hours.`,
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** What the chart of grease shows, in a sentence with its numbers. */
export function greaseSentence({ greases, weeks }: GreasingForecast): string {
  const parts = greases.slice(0, 3).map(({ name, grams }) => `${gramText(grams)} of ${name}`)
  const left = greases.length - parts.length
  if (left > 0) parts.push(`${left} more`)
  return `In ${weeks.length} weeks: ${parts.join(', ')}.`
}

/** Grams as people carry them: "840 g", "3.2 kg". */
export function gramText(grams: number): string {
  return grams < 1000 ? `${formatCount(grams)} g` : `${(grams / 1000).toFixed(1)} kg`
}

/** A bar has a colour for this many greases; the rest stand together. */
const drawnGreases = 4

export interface GreaseSeries {
  key: string
  name: string
  gramsOf: (week: ForecastWeek) => number
}

/** One series a grease, the most first; from the fifth on they are put together. */
export function greaseSeries({ greases }: GreasingForecast): GreaseSeries[] {
  const shown = greases.length > drawnGreases + 1 ? greases.slice(0, drawnGreases) : greases
  const rest = greases.slice(shown.length)
  const gramsOf = (ids: readonly string[]) => (week: ForecastWeek) =>
    sum(
      week.grams.filter(({ greaseId }) => ids.includes(greaseId)),
      ({ grams }) => grams,
    )
  return [
    ...shown.map(({ id, name }) => ({ key: id, name, gramsOf: gramsOf([id]) })),
    ...(rest.length === 0
      ? []
      : [{ key: 'rest', name: `${rest.length} others`, gramsOf: gramsOf(rest.map(({ id }) => id)) }]),
  ]
}

function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((total, item) => total + of(item), 0)
}
