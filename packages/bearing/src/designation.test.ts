import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeWithBore, parseDesignation, printDesignation, type Designation } from './designation.ts'
import { InputError } from './input-error.ts'

describe('bearing designations', () => {
  it.each([
    ['22220 K/C3', '22220', 100, '1:12', 'C3', []],
    ['23160-K-C4', '23160', 300, '1:12', 'C4', []],
    ['  22220k/c3 ', '22220', 100, '1:12', 'C3', []],
    ['22220   EK   C3 W33', '22220', 100, '1:12', 'C3', ['E', 'W33']],
    ['22220CCK/C3W33', '22220', 100, '1:12', 'C3', ['CC', 'W33']],
    ['22220KMB-W33C3', '22220', 100, '1:12', 'C3', ['MB', 'W33']],
    ['23124 CAK/C08', '23124', 120, '1:12', 'CN', ['CA', 'C08']],
    ['NU 220 K/C3', 'NU220', 100, '1:12', 'C3', []],
    ['24040 K30', '24040', 200, '1:30', 'CN', []],
    ['24040', '24040', 200, null, 'CN', []],
    ['22220KC2', '22220', 100, '1:12', 'C2', []],
    ['22220 K/C0', '22220', 100, '1:12', 'CN', []],
    ['230/500 K/C5', '230/500', 500, '1:12', 'C5', []],
    ['1204', '1204', 20, null, 'CN', []],
    ['6203 2RS', '6203', 17, null, 'CN', ['2RS']],
    ['608', '608', 8, null, 'CN', []],
    ['NU 220', 'NU220', 100, null, 'CN', []],
  ] as const)('%s is read', (text, basicCode, boreMm, taper, clearanceClass, suffixes) => {
    expect(parseDesignation(text)).toMatchObject({ basicCode, boreMm, taper, clearanceClass, suffixes })
  })

  it('series and bore code are told apart', () => {
    expect(parseDesignation('23160 K')).toMatchObject({ series: '231', boreCode: '60' })
    expect(parseDesignation('230/500 K')).toMatchObject({ series: '230', boreCode: '500' })
  })

  it.each(['', 'K/C3', '22', '22297', '22200 K#', '22220 C3 C4', '24040 K', '24130 K/C3', '230/50 K'])(
    '%j is refused',
    (text) => {
      expect(() => parseDesignation(text)).toThrow(InputError)
    },
  )

  it('22220 K/C3 prints in its own form, CN is not printed', () => {
    expect(printDesignation(parseDesignation('22220-k-c3'))).toBe('22220 K/C3')
    expect(printDesignation(parseDesignation('22220 K/CN'))).toBe('22220 K')
    expect(printDesignation(parseDesignation('22220'))).toBe('22220')
    expect(codeWithBore(parseDesignation('22220 K/C3'))).toBe('22220K')
  })

  const designations: fc.Arbitrary<Designation> = fc
    .record({
      series: fc.constantFrom('213', '222', '223', '230', '231', '232', '239', '240', '241'),
      bore: fc.integer({ min: 4, max: 96 }),
      tapered: fc.boolean(),
      clearanceClass: fc.constantFrom('C2' as const, 'CN' as const, 'C3' as const, 'C4' as const, 'C5' as const),
      letters: fc.subarray(['E', 'CC', 'CA', 'MB']),
      others: fc.subarray(['W33', 'W20', 'S1', '2RS']),
    })
    .map(({ series, bore, tapered, clearanceClass, letters, others }) => {
      const boreCode = String(bore).padStart(2, '0')
      const taper = tapered ? (series.startsWith('24') ? ('1:30' as const) : ('1:12' as const)) : null
      const suffixes = [...letters, ...others]
      return { basicCode: series + boreCode, series, boreCode, boreMm: bore * 5, taper, clearanceClass, suffixes }
    })

  it('what is printed is read back as the same designation, whatever the case and spaces', () => {
    fc.assert(
      fc.property(designations, fc.boolean(), (designation, lower) => {
        const printed = printDesignation(designation)
        expect(parseDesignation(printed)).toEqual(designation)
        expect(parseDesignation(`  ${lower ? printed.toLowerCase() : printed.replaceAll('/', ' - ')} `)).toEqual(
          designation,
        )
      }),
    )
  })

  it('reading any text gives a designation or an InputError, nothing else', () => {
    const outcome = (text: string): unknown => {
      try {
        return parseDesignation(text).boreMm > 0
      } catch (error) {
        return error instanceof InputError
      }
    }
    fc.assert(
      fc.property(fc.string(), fc.stringMatching(/^[0-9A-Z/ -]{0,12}$/), (any, likely) => {
        expect([outcome(any), outcome(likely)]).toEqual([true, true])
      }),
    )
  })
})
