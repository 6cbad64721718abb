import { describe, expect, it } from 'vitest'
import { parseDesignation } from './designation.ts'
import { mayReplace, type InterchangeContext } from './interchange.ts'
import { proposeKit } from './kit.ts'
import { checkKitPair, sleeveFor } from './kit-pair.ts'

const bearing = (text: string): ReturnType<typeof parseDesignation> => parseDesignation(text)

describe('kit pairs', () => {
  it.each([
    ['22220 K', 'H320', 'KM20', 'MB20'],
    ['22222 K/C3', 'H322', 'KM22', 'MB22'],
    ['22224 K', 'H3124', 'KM24', 'MB24'],
    ['22320 K', 'H2320', 'KM20', 'MB20'],
    ['23220 K', 'H2320', 'KM20', 'MB20'],
  ])('R-KIT-PAIR %s takes %s, %s and %s', (text, sleeveCode, nutCode, lockingCode) => {
    expect(sleeveFor(bearing(text))).toMatchObject({ found: true, sleeveCode, nutCode, lockingCode })
    expect(checkKitPair({ bearing: bearing(text), sleeveCode, nutCode, lockingCode })).toMatchObject({
      verdict: 'fits',
      findings: [],
    })
  })

  it.each([
    ['22220', 'cylindrical bore'],
    ['24040 K30', '24040K30'],
    ['22204 K', '22204K'],
  ])('R-KIT-PAIR no sleeve is guessed for %s', (text, part) => {
    const choice = sleeveFor(bearing(text))
    expect(choice.found).toBe(false)
    expect('reason' in choice && choice.reason).toContain(part)
  })

  it.each([
    [{ bearing: bearing('22220'), sleeveCode: 'H320' }, 'cylindrical bore'],
    [{ bearing: bearing('24020 K30'), sleeveCode: 'H320' }, 'taper of 1:30'],
    [{ bearing: bearing('22222 K'), sleeveCode: 'H320' }, 'takes bores of 100 mm'],
    [{ bearing: bearing('22320 K'), sleeveCode: 'H320' }, 'it takes H2320'],
    [{ bearing: bearing('22220 K'), sleeveCode: 'H320', nutCode: 'AN20' }, 'inch thread'],
    [{ bearing: bearing('22220 K'), sleeveCode: 'H320', nutCode: 'KM22' }, 'M110x2'],
    [{ bearing: bearing('22220 K'), sleeveCode: 'H320', lockingCode: 'MB22' }, 'that one takes MB20'],
  ])('R-KIT-PAIR %j is refused with its reason', (pair, part) => {
    const check = checkKitPair(pair)
    expect(check.verdict).toBe('refused')
    expect(check.findings.map((finding) => finding.sentence).join(' ')).toContain(part)
  })

  it('R-KIT-PAIR what the table does not know is asked, not passed', () => {
    expect(checkKitPair({ bearing: bearing('22220 K'), sleeveCode: 'X99' }).verdict).toBe('ask')
    expect(checkKitPair({ bearing: bearing('22220 K'), sleeveCode: 'H320', nutCode: 'Z1' }).verdict).toBe('ask')
  })

  it('codes are compared without case and spaces', () => {
    const pair = { bearing: bearing('22220k'), sleeveCode: ' h 320', nutCode: 'km 20', lockingCode: 'mb20' }
    expect(checkKitPair(pair).verdict).toBe('fits')
  })
})

describe('interchange', () => {
  const cases: [string, string, string, InterchangeContext?][] = [
    ['22220 K/C3', '22220-k-c3', 'allowed'],
    ['22220 K/C3', '22220 K', 'never'],
    ['22220 K/C3', '22220 K/C2', 'never'],
    ['22220 K', '22220 K/C3', 'ask-engineer'],
    ['22220 K', '22220', 'never'],
    ['24040', '24040 K30', 'never'],
    ['22220 K', '22320 K', 'ask-engineer'],
    ['22220 K/W33', '22220 K', 'ask-engineer'],
    ['22220 E-K/W33', '22220 CC-K/W33', 'ask-engineer'],
    ['22220 E-K/W33', '22220 CC-K/W33', 'allowed', { sameCageLimits: true }],
    ['22220 K', '22220 K/2CS', 'never'],
    ['22220 K', '22220 K/2CS', 'allowed', { greasePlanChanged: true, sameCageLimits: true }],
  ]
  it.each(cases)('R-KIT-PAIR for %s a %s is %s', (needed, offered, verdict, context = {}) => {
    const result = mayReplace(bearing(needed), bearing(offered), context)
    expect(result.verdict).toBe(verdict)
    expect(result.reasons.length > 0).toBe(verdict !== 'allowed')
  })
})

describe('kit of a position', () => {
  const rings = { seatWidthMm: 70, bearingWidthMm: 46, locating: true }

  it('R-KIT-PAIR and R-RING a locating 22220 K/C3 gets sleeve, nut, washer, two rings, seals and grease', () => {
    const kit = proposeKit({ bearing: bearing('22220 k-c3'), rings, greaseG: 300 })
    expect(kit.lines.map(({ part, code, quantity, need }) => [part, code, quantity, need])).toEqual([
      ['bearing', '22220 K/C3', 1, 'must'],
      ['sleeve', 'H320', 1, 'must'],
      ['nut', 'KM20', 1, 'may'],
      ['washer or clip', 'MB20', 1, 'must'],
      ['locating ring', '12 mm', 2, 'must'],
      ['seal', null, 2, 'must'],
      ['grease', null, 300, 'must'],
    ])
  })

  it('R-RING a non-locating position gets no rings', () => {
    const kit = proposeKit({ bearing: bearing('22220 K'), rings: { ...rings, locating: false }, greaseG: 300 })
    expect(kit.lines.some((line) => line.part === 'locating ring')).toBe(false)
  })

  it('R-KIT-PAIR the shaft as measured and the housing are held against the tables', () => {
    const kit = { bearing: bearing('22220 K'), rings, greaseG: 300 }
    const questions = (more: object): string => proposeKit({ ...kit, ...more }).questions.join(' ')
    expect(
      proposeKit({ ...kit, shaft: { mm: 89.95, system: 'metric' }, housingCode: 'SN 520' }).questions,
    ).toHaveLength(1)
    expect(questions({ shaft: { mm: 88, system: 'metric' } })).toContain('H320 is for a shaft of 90 mm')
    expect(questions({ housingCode: 'SN522' })).toContain('SN522')
  })

  it('R-INCH an inch shaft never gets the metric sleeve without a question', () => {
    const kit = { bearing: bearing('22218 K'), rings, greaseG: 300 }
    const questions = (mm: number, system: 'inch' | null): string =>
      proposeKit({ ...kit, shaft: { mm, system } }).questions.join(' ')
    expect(questions(74.61, null)).toContain('2 15/16')
    expect(questions(74.61, 'inch')).toContain('enter the inch sleeve')
  })

  it('seals have no row in any table, and the kit says so', () => {
    expect(proposeKit({ bearing: bearing('22220 K'), rings, greaseG: 300 }).questions.join(' ')).toContain(
      'No table has a row for seals',
    )
  })

  it('what is not known is a question, not a guess', () => {
    const kit = proposeKit({ bearing: bearing('24040 K30'), rings: null, greaseG: null })
    expect(kit.lines.map((line) => line.part)).toEqual(['bearing', 'seal'])
    expect(kit.questions).toHaveLength(4)
  })
})
