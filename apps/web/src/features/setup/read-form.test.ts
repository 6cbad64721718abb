import { describe, expect, it } from 'vitest'
import type { FieldSpec } from './form-spec.ts'
import { readForm } from './read-form.ts'
import { startValues } from './start-values.ts'

const reader = { unit: 'mm' as const, timeZone: 'Europe/Berlin', now: new Date('2026-02-14T12:00:00Z') }
const fields: FieldSpec[] = [
  { name: 'tag', label: 'Tag', kind: 'text' },
  { name: 'speedRpm', label: 'Speed', kind: 'number', unit: 'rev/min', optional: 'null' },
  { name: 'walkingOrder', label: 'Order', kind: 'number', unit: '', whole: true, empty: 0 },
  { name: 'ownReductionMinUm', label: 'Least reduction', kind: 'clearance', optional: 'null' },
  { name: 'kitId', label: 'Kit', kind: 'choice', choices: [{ value: 'a', label: 'A' }], none: 'no kit' },
  { name: 'standby', label: 'Standby', kind: 'yes-no', yes: 'stands by', no: 'runs' },
  { name: 'readAt', label: 'Read at', kind: 'moment' },
  { name: 'retiredAt', label: 'Retired', kind: 'since', on: 'retired' },
]
const filled = {
  tag: ' BE-07 ',
  speedRpm: '92,5',
  walkingOrder: '',
  ownReductionMinUm: { text: '0,045', unit: 'mm' as const },
  kitId: '',
  standby: 'no',
  readAt: '2026-02-14T08:30',
  retiredAt: '',
}

describe('readForm(fields, values, reader)', () => {
  it('reads numbers with comma or point, clearances into µm, moments on the clock of the plant', () => {
    const { body, faults } = readForm(fields, filled, reader)
    expect(Object.fromEntries(faults)).toEqual({})
    expect(body).toEqual({
      tag: 'BE-07',
      speedRpm: 92.5,
      walkingOrder: 0,
      ownReductionMinUm: 45,
      kitId: null,
      standby: false,
      readAt: '2026-02-14T07:30:00.000Z',
      retiredAt: null,
    })
  })
  it('names each fault at its field, in the order of the form', () => {
    const { faults } = readForm(
      fields,
      {
        ...filled,
        tag: ' ',
        speedRpm: '1.234,5',
        walkingOrder: '1,5',
        ownReductionMinUm: { text: 'x', unit: 'mm' },
        readAt: '',
      },
      reader,
    )
    expect([...faults.keys()]).toEqual(['tag', 'speedRpm', 'walkingOrder', 'ownReductionMinUm', 'readAt'])
    expect(faults.get('tag')).toBe('Enter: tag')
  })
  it('keeps the moment of a position that is retired already, and takes now for a new one', () => {
    const retired = (retiredAt: string) => readForm(fields, { ...filled, retiredAt }, reader).body['retiredAt']
    expect(retired('2025-01-01T00:00:00.000Z')).toBe('2025-01-01T00:00:00.000Z')
    expect(retired('now')).toBe('2026-02-14T12:00:00.000Z')
  })
})

describe('startValues(fields, row, unit)', () => {
  it('gives back what readForm reads as the same row', () => {
    const row = {
      tag: 'BE-07',
      speedRpm: 92.5,
      walkingOrder: 3,
      ownReductionMinUm: 45,
      kitId: 'a',
      standby: true,
      retiredAt: null,
    }
    const kept = fields.filter(({ name }) => name !== 'readAt')
    expect(readForm(kept, startValues(kept, row, 'mm'), reader).body).toEqual(row)
  })
  it('loses no thousandth of a micrometre on its way through a unit', () => {
    const [band] = fields.filter(({ kind }) => kind === 'clearance')
    const through = readForm([band!], startValues([band!], { ownReductionMinUm: 45.5 }, 'mm'), reader)
    expect(through.body).toEqual({ ownReductionMinUm: 45.5 })
  })
})
