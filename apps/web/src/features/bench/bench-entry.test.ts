import { allCalculations } from '@shaftbook/contract/calculations/all-calculations'
import type { Fields } from '@shaftbook/contract/calculations/field'
import { describe, expect, it } from 'vitest'
import { readEntry, searchOf, startEntry, type Entry } from './bench-entry.ts'

const fieldsOf = (name: string): Fields => {
  const found = allCalculations.find((calculation) => calculation.name === name)
  if (!found) throw new Error(`There is no calculation ${name}.`)
  return found.input
}
const typed = (entry: Record<string, string>): Entry =>
  Object.fromEntries(Object.entries(entry).map(([name, text]) => [name, { text, unit: null }]))

describe('what is typed on the bench', () => {
  it('is read with comma or point, lengths in the person’s unit', () => {
    const { input, faults } = readEntry(fieldsOf('go-no-go'), typed({ passesUm: '0,07', stopsUm: '.08' }), 'mm')
    expect(input).toEqual({ passesUm: 70, stopsUm: 80 })
    expect(faults.size).toBe(0)
  })

  it('takes several readings apart at spaces, keeping commas as decimal marks', () => {
    const entry = typed({ wantedUm: '130', bladesUm: '30 40; 50,5' })
    expect(readEntry(fieldsOf('feeler-stack'), entry, 'um').input).toEqual({ wantedUm: 130, bladesUm: [30, 40, 50.5] })
  })

  it('leaves out what is not given, and asks for what is needed', () => {
    const { input, faults } = readEntry(fieldsOf('grease-dose'), typed({ widthMm: 'x' }), 'mm')
    expect(input).toEqual({})
    expect([...faults]).toEqual([
      ['outsideDiameterMm', 'Enter: outside diameter D'],
      ['widthMm', '"x" is not one number. Type it again, such as 12,5'],
      ['entry', 'Choose: the grease enters'],
    ])
  })

  it('wants whole numbers where things are counted', () => {
    const { faults } = readEntry(fieldsOf('lock-step'), typed({ nutCode: 'KM20', tabs: '16.5', taper: '1:12' }), 'mm')
    expect([...faults.keys()]).toEqual(['tabs'])
  })
})

describe('the address of an input', () => {
  it.each(['mm', 'um', 'in', 'thou'] as const)('fills the form in %s so that the same input is read again', (unit) => {
    const input = { wantedUm: 127, bladesUm: [25.4, 50.8, 76.2], maxBlades: 3 }
    const fields = fieldsOf('feeler-stack')
    expect(readEntry(fields, startEntry(fields, searchOf(input), unit), unit).input).toEqual(input)
  })

  it('keeps lengths that the person’s unit can’t show exactly, in µm', () => {
    const fields = fieldsOf('go-no-go')
    const entry = startEntry(fields, { passesUm: 70, stopsUm: 80 }, 'thou')
    expect(entry).toMatchObject({ passesUm: { text: '70', unit: 'um' } })
  })

  it('keeps yes and no, tags and codes', () => {
    const input = { locatingTags: ['A-01', 'A-02'], otherTags: [] }
    const fields = fieldsOf('locating-check')
    expect(readEntry(fields, startEntry(fields, searchOf(input), 'mm'), 'mm').input).toEqual(input)
    const heat = { interferenceUm: 60, boreMm: 100, sealed: false }
    expect(readEntry(fieldsOf('hot-fit'), startEntry(fieldsOf('hot-fit'), searchOf(heat), 'mm'), 'mm').input).toEqual(
      heat,
    )
  })
})
