import { array, assert, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { temperatureRise, vibrationRise, zoneWorse } from './observed-rise.ts'

describe('temperature against the position’s own history', () => {
  it.each([
    // median of 48, 50, 52, 51 is 50.5
    [[48, 50, 52, 51], 65.5, 'usual', 50.5],
    [[48, 50, 52, 51], 65.6, 'risen', 50.5],
    [[48, 50, 90], 64, 'usual', 50],
    [[48, 50], 120, 'unknown', null],
    [[], 120, 'unknown', null],
  ] as const)('R-OVER after %j a reading of %d °C is %s', (earlier, newest, verdict, usual) => {
    expect(temperatureRise(earlier, newest)).toMatchObject({ verdict, usual })
  })

  it('only the newest ten count', () => {
    const cold = Array.from({ length: 20 }, () => 20)
    const warm = Array.from({ length: 10 }, () => 60)
    expect(temperatureRise([...cold, ...warm], 70)).toMatchObject({ verdict: 'usual', usual: 60 })
  })

  it('R-OVER a higher reading is never milder', () => {
    const celsius = integer({ min: 0, max: 120 })
    assert(
      property(
        array(celsius, { minLength: 3, maxLength: 12 }),
        celsius,
        integer({ min: 0, max: 50 }),
        (earlier, newest, more) => {
          const risen = (value: number): boolean => temperatureRise(earlier, value).verdict === 'risen'
          expect(risen(newest + more) || !risen(newest)).toBe(true)
        },
      ),
    )
  })
})

describe('vibration against the position’s own history', () => {
  it.each([
    // a quarter of 2.8 mm/s is 0.7 mm/s
    [[1.0, 1.1, 0.9], 1.7, 'usual'],
    [[1.0, 1.1, 0.9], 1.71, 'risen'],
    // scatter: median 2, deviations 1, 0, 1: three times their median is 3
    [[1, 2, 3], 5, 'usual'],
    [[1, 2, 3], 5.1, 'risen'],
    [[1, 1], 9, 'unknown'],
  ] as const)('after %j mm/s a reading of %d is %s', (earlier, newest, verdict) => {
    expect(vibrationRise(earlier, newest).verdict).toBe(verdict)
  })

  it('goes by the machine’s own limit of zone B where it is known', () => {
    // a quarter of 7.1 mm/s is 1.775 mm/s
    expect(vibrationRise([1, 1, 1], 2.7, 7.1).verdict).toBe('usual')
    expect(vibrationRise([1, 1, 1], 2.8, 7.1).verdict).toBe('risen')
  })

  it.each([
    [[], 'C', true],
    [['A', 'B'], 'C', true],
    [['C', 'C'], 'C', false],
    [['C', 'C'], 'D', true],
    [['A'], 'B', false],
    [['D'], 'C', false],
  ] as const)('zones %j and then %s is worse: %s', (earlier, newest, worse) => {
    expect(zoneWorse(earlier, newest)).toBe(worse)
  })

  it('numbers that cannot be are refused', () => {
    expect(() => vibrationRise([1, 1, 1], -1)).toThrow(InputError)
    expect(() => temperatureRise([1, 1, Number.NaN], 20)).toThrow(InputError)
  })
})
