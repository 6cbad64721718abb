import { adapterSleevesTable } from '@shaftbook/standards/adapter-sleeves.data'
import { lockNutsTable } from '@shaftbook/standards/lock-nuts.data'
import { lockWashersTable } from '@shaftbook/standards/lock-washers.data'
import { plummerBlocksTable } from '@shaftbook/standards/plummer-blocks.data'
import { describe, expect, it } from 'vitest'
import { decodeGrease } from './grease-code.ts'
import { InputError } from './input-error.ts'
import { parsePartCode } from './part-code.ts'

describe('codes of parts', () => {
  it.each([
    [' h 320 ', 'sleeve', 'H320', 'metric'],
    ['km 20', 'nut', 'KM20', 'metric'],
    ['HM44T', 'nut', 'HM44T', 'metric'],
    ['an 20', 'nut', 'AN20', 'inch'],
    ['N09', 'nut', 'N09', 'inch'],
    ['mb20', 'washer', 'MB20', 'metric'],
    ['W 20', 'washer', 'W20', 'inch'],
    ['MS3052–48', 'clip', 'MS3052-48', 'metric'],
    ['SN 520', 'housing', 'SN520', 'metric'],
  ])('%j is a %s, %s, %s', (text, kind, code, system) => {
    expect(parsePartCode(text)).toEqual({ kind, code, system })
  })

  it('every code of the tables is read as its own kind', () => {
    const kindOf = (code: string): string => parsePartCode(code).kind
    for (const row of adapterSleevesTable.rows) {
      expect(kindOf(row.sleeveCode)).toBe('sleeve')
      expect(kindOf(row.lockingCode)).toBe(row.lockingType === 'clip' ? 'clip' : 'washer')
    }
    for (const row of lockNutsTable.rows) expect(kindOf(row.nutCode)).toBe('nut')
    for (const row of lockWashersTable.rows) expect(kindOf(row.washerCode)).toBe('washer')
    for (const row of plummerBlocksTable.rows) expect(kindOf(row.housingCode)).toBe('housing')
  })

  it.each(['', '22220', 'HK320', 'SN520X'])('%j is refused', (text) => {
    expect(() => parsePartCode(text)).toThrow(InputError)
  })
})

describe('grease codes', () => {
  it('KP2K-20 is an EP bearing grease of NLGI 2 from −20 to 120 °C', () => {
    expect(decodeGrease('kp2k-20')).toMatchObject({
      use: 'rolling and plain bearing grease',
      additive: 'EP / anti-wear additives',
      baseOil: 'mineral oil',
      nlgi: '2',
      maxC: 120,
      minC: -20,
      water: '0-90 or 1-90',
    })
  })

  it('KPFHC1N-40 has solid lubricants, a synthetic oil and goes from −40 to 140 °C', () => {
    expect(decodeGrease('KPFHC1N-40')).toMatchObject({
      additive: 'both',
      baseOil: 'synthetic hydrocarbon',
      maxC: 140,
      minC: -40,
    })
  })

  it('the letters G and H say that lists differ', () => {
    expect(decodeGrease('K2G-20').cautions).toHaveLength(1)
  })

  it.each(['', 'K2', 'KP9K-20', 'KP2K-25', 'ZP2K-20'])('%j is refused', (text) => {
    expect(() => decodeGrease(text)).toThrow(InputError)
  })
})
