import { describe, expect, it } from 'vitest'
import { readMeasure } from './measure-text.ts'

describe('readMeasure(measure, ownUnit)', () => {
  it.each([
    ['0,105', 'mm', 105],
    ['105', 'um', 105],
    ['4.1', 'thou', 104.14],
    ['.0041', 'in', 104.14],
  ] as const)('reads %s %s as %d µm and keeps what was typed', (text, unit, um) => {
    const read = readMeasure({ text, unit }, 'mm')
    expect(read).toMatchObject({ kind: 'length', um, typed: { unit } })
  })
  it('uses the unit of the person where none was chosen', () =>
    expect(readMeasure({ text: '5', unit: null }, 'thou')).toMatchObject({ um: 127 }))
  it('tells empty from not a number', () => {
    expect(readMeasure({ text: ' ', unit: null }, 'mm').kind).toBe('empty')
    expect(readMeasure({ text: '0,1,2', unit: 'mm' }, 'mm').kind).toBe('not-a-number')
  })
})
