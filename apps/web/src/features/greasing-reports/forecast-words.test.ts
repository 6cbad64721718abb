import type { GreasingForecast } from '@shaftbook/contract/greasing-reports'
import { describe, expect, it } from 'vitest'
import { gramText, greaseSentence, greaseSeries, weeksOf, workSentence } from './forecast-words.ts'

const ids = ['a', 'b', 'c', 'd', 'e', 'f']
const week = (startsOn: string, stops: number, waiting: number) => ({
  startsOn,
  endsOn: startsOn,
  stops,
  waiting,
  hours: stops / 6,
  grams: ids.map((greaseId, index) => ({ greaseId, grams: 100 - index })),
})
const forecast: GreasingForecast = {
  today: '2026-11-25',
  weeks: [week('2026-11-23', 5, 2), week('2026-11-30', 7, 0)],
  greases: ids.map((id, index) => ({ id, name: `Grease ${id}`, grams: 2 * (100 - index) })),
  tasks: [{ task: 'regrease', stops: 12 }],
  minutesPerStop: 10,
  minutesAssumed: true,
  estimatedStops: 4,
}

describe('workSentence(forecast)', () => {
  it('tells stops and hours, what is assumed, what waits and what is estimated', () => {
    expect(workSentence(forecast)).toBe(
      '12 stops in 2 weeks, 2.0 h at 10 min a stop (assumed: the site has not said how long one takes). 2 of them were due before today. The day of 4 follows from average run hours.',
    )
    expect(workSentence({ ...forecast, minutesAssumed: false })).toContain('(as the site says)')
  })

  it('says that nothing is due', () => {
    expect(workSentence({ ...forecast, weeks: [week('2026-11-23', 0, 0), week('2026-11-30', 0, 0)] })).toBe(
      'Nothing is due in these 2 weeks.',
    )
  })
})

describe('greaseSeries(forecast)', () => {
  it('puts what is beyond five greases together, and loses no gram', () => {
    const series = greaseSeries(forecast)
    expect(series.map(({ name }) => name)).toEqual(['Grease a', 'Grease b', 'Grease c', 'Grease d', '2 others'])
    const drawn = series.reduce(
      (total, { gramsOf }) => total + gramsOf(forecast.weeks[0] as (typeof forecast.weeks)[0]),
      0,
    )
    expect(drawn).toBe(100 + 99 + 98 + 97 + 96 + 95)
  })

  it('gives five greases a colour each', () => {
    expect(greaseSeries({ ...forecast, greases: forecast.greases.slice(0, 5) })).toHaveLength(5)
  })
})

it('greaseSentence and gramText tell the greases with the most to carry', () => {
  expect(greaseSentence(forecast)).toBe('In 2 weeks: 200 g of Grease a, 198 g of Grease b, 196 g of Grease c, 3 more.')
  expect([gramText(840), gramText(3210)]).toEqual(['840 g', '3.2 kg'])
})

it('weeksOf(text) is 8 where nothing was said', () => {
  expect([weeksOf(undefined), weeksOf('4'), weeksOf('13')]).toEqual([8, 4, 13])
})
