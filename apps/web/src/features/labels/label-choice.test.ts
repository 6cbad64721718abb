import { describe, expect, it } from 'vitest'
import { readChoice, usualChoice } from './label-choice.ts'

describe('readChoice(choice)', () => {
  it('reads numbers with comma or point', () => {
    const read = readChoice({ ...usualChoice, width: '62,5', height: '29.5' })
    expect(read).toMatchObject({ ok: true, paper: { paper: 'roll', widthMm: 62.5, heightMm: 29.5 } })
  })

  it('says at the field what is wrong, of the paper that is chosen only', () => {
    expect(readChoice({ ...usualChoice, width: '10', height: 'high', columns: '99' })).toEqual({
      ok: false,
      faults: { width: 'At least 25', height: 'Enter a number' },
    })
    expect(readChoice({ ...usualChoice, paper: 'a4', width: '10', columns: '99' })).toEqual({
      ok: false,
      faults: { columns: 'At most 8' },
    })
  })
})
