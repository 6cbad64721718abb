import { describe, expect, it } from 'vitest'
import { startAnswers } from './sheet-start.ts'
import type { Sheet } from './sheet.ts'

const run = (temperatures: string[], twin = '') =>
  startAnswers({
    startReadings: temperatures.map((temperatureC) => ({ minutes: '', temperatureC, vibrationMmS: '' })),
    twinTemperatureC: twin,
  } as unknown as Sheet).map(({ name, outcome }) => [name, outcome])

describe('startAnswers(sheet)', () => {
  it('says nothing without a temperature', () => expect(run(['', 'warm'])).toEqual([]))
  it.each([
    ['90', 'pass'],
    ['90,5', 'fail'],
  ])('%s °C: %s', (celsius, outcome) => expect(run([celsius])).toEqual([['Highest temperature', outcome]]))
  it.each([
    ['70', 'pass'],
    ['70.1', 'warning'],
  ])('%s °C beside a twin of 40 °C: %s', (celsius, outcome) =>
    expect(run([celsius], '40')).toContainEqual(['Beside its twin', outcome]),
  )
  it('rises while the last is above the one before, and has settled when it is not', () => {
    expect(run(['38', '45'])).toContainEqual(['Course', 'not-proven'])
    expect(run(['38', '45', '44'])).toContainEqual(['Course', 'pass'])
  })
})
