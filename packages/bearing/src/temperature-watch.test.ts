import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { temperatureWatch } from './temperature-watch.ts'

const watch = (...pairs: [number, number][]): ReturnType<typeof temperatureWatch> =>
  temperatureWatch(
    50,
    pairs.map(([hours, celsius]) => ({ hours, celsius })),
  )

describe('temperature after much grease', () => {
  it('R-OVER more than 15 K for more than 24 h means taking the excess out', () => {
    expect(watch([1, 66], [12, 68], [25.5, 66])).toMatchObject({
      verdict: 'remove-excess',
      warmHours: 24.5,
      highestRiseK: 18,
    })
  })

  it('R-OVER 24 h exactly, or 15 K exactly, is not yet too much', () => {
    expect(watch([1, 66], [25, 66]).verdict).toBe('watch')
    expect(watch([1, 65], [40, 65]).verdict).toBe('settled')
  })

  it('R-OVER a peak that falls within hours has settled, two short ones are not added', () => {
    expect(watch([1, 70], [8, 60]).verdict).toBe('settled')
    expect(watch([1, 70], [20, 70], [21, 55], [22, 70], [40, 70])).toMatchObject({ verdict: 'watch', warmHours: 19 })
  })

  it('no reading, readings out of order and impossible ones are refused', () => {
    expect(() => watch()).toThrow(InputError)
    expect(() => watch([2, 60], [1, 60])).toThrow('in the order of their hours')
    expect(() => watch([1, 900])).toThrow(InputError)
  })
})
