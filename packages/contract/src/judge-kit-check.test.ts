import { describe, expect, it } from 'vitest'
import { judgeKitCheck, takenCode, type KitBearing, type KitCheckPlace } from './judge-kit-check.ts'
import { KitCheckLine } from './mount-details.ts'

const bearing: KitBearing = {
  designation: '22220 K/C3',
  basicCode: '22220',
  series: '222',
  boreMm: 100,
  taper: '1:12',
  clearanceClass: 'C3',
}
const position = { tag: 'BC-01-HD-DE', seat: 'adapter-sleeve', locating: true, shaftDiameterMm: 90 } as const
const place: KitCheckPlace = { position, shaftSystem: 'metric', planned: bearing, bearing }

function line(kind: string, plannedCode: string, over: object = {}) {
  return KitCheckLine.parse({ kind, plannedCode, found: 'as-planned', quantity: 1, ...over })
}
const whole = [
  line('bearing', '22220 K/C3'),
  line('sleeve', 'H320'),
  line('nut', 'KM20'),
  line('washer', 'MB20'),
  line('ring', 'Ring 180/12', { quantity: 2 }),
  line('seal', 'Seal 90/SN520', { quantity: 2 }),
  line('grease', 'Marl EP 2', { quantity: 300, unit: 'g' }),
]

/** The kit with one line said otherwise: what is answered on that line. */
function answer(kind: string, over: object, at: Partial<KitCheckPlace> = {}) {
  const lines = whole.map((one) => (one.kind === kind ? { ...one, ...over } : one))
  return judgeKitCheck(lines, { ...place, ...at })[lines.findIndex((one) => one.kind === kind)]
}
const other = (foundCode: string) => ({ found: 'other', foundCode }) as const

describe('a kit check', () => {
  it('of a kit as planned passes on every line', () => {
    expect(judgeKitCheck(whole, place)).toEqual(whole.map(() => ({ verdict: 'ok' })))
  })

  it.each([
    ['bearing', '22220 K', 'less clearance than C3'],
    ['bearing', '22220 K/C2', 'less clearance than C3'],
    ['bearing', '22220/C3', 'cylindrical bore'],
    ['bearing', '22220 K30/C3', 'bore of 1:30'],
    ['bearing', '22220 K/C3/2CS', 'not without another grease plan'],
    ['bearing', '22220 K/C4', 'on the bench lies 22220 K/C4'],
    ['bearing', '22320 K/C3', 'on the bench lies 22320 K/C3'],
    ['sleeve', 'H318', 'takes bores of 90 mm'],
    ['sleeve', 'H2320', 'it takes H320'],
    ['nut', 'KM22', 'M110x2'],
    ['nut', 'AN20', 'inch'],
    ['washer', 'MB22', 'that one takes MB20'],
    ['washer', 'W20', 'inch and metric never go together'],
  ])('refuses a %s %s: %s', (kind, code, part) => {
    expect(answer(kind, other(code))).toMatchObject({ verdict: 'refused', sentence: expect.stringContaining(part) })
  })

  it.each([
    ['seal', 'Seal 90/SN522', 'the kit plans Seal 90/SN520'],
    ['grease', 'Tarn EP 1', 'the kit plans Marl EP 2'],
    ['sleeve', 'H320 S', 'There is no row'],
    ['nut', 'KML20', 'KM20'],
    ['bearing', '22220 BK/C3', 'Design or cage differ'],
    ['bearing', 'Big one', 'cannot be read as a bearing'],
    ['ring', 'Ring 180/24', 'the kit plans Ring 180/12'],
  ])('asks about a %s %s: %s', (kind, code, part) => {
    expect(answer(kind, other(code))).toMatchObject({ verdict: 'asked', sentence: expect.stringContaining(part) })
  })

  it('asks about a missing part, and not about one that is not needed', () => {
    expect(answer('washer', { found: 'missing' })).toEqual({
      verdict: 'asked',
      sentence: 'MB20 is missing: say why the mount goes on without it.',
    })
    expect(answer('nut', { found: 'not-needed' })).toEqual({ verdict: 'ok' })
  })

  it('asks about a part beside the kit', () => {
    const beside = line('consumable', '', { ...other('Paste 4') })
    expect(judgeKitCheck([beside], place)).toEqual([
      { verdict: 'asked', sentence: 'Paste 4 is not in the kit: say why it was taken.' },
    ])
  })

  it('refuses another part without its code', () => {
    expect(answer('seal', other(''))).toEqual({
      verdict: 'refused',
      sentence: 'Enter the code of the seal that was taken.',
    })
  })

  it('refuses what the kit plans where it never goes together', () => {
    expect(answer('nut', { plannedCode: 'KM22' })).toMatchObject({ verdict: 'refused' })
  })

  it('takes what the kit plans and no table knows', () => {
    const lines = [line('sleeve', 'SX 9'), line('nut', 'NX 9'), line('washer', 'WX 9')]
    expect(judgeKitCheck(lines, place)).toEqual([{ verdict: 'ok' }, { verdict: 'ok' }, { verdict: 'ok' }])
  })

  it('refuses rings where the position does not locate', () => {
    expect(answer('ring', {}, { position: { ...position, locating: false } })).toEqual({
      verdict: 'refused',
      sentence: 'BC-01-HD-DE does not locate the shaft: no ring goes in.',
    })
  })

  it('refuses a metric sleeve on an inch shaft, and one for another shaft', () => {
    expect(answer('sleeve', {}, { shaftSystem: 'inch' })).toMatchObject({
      verdict: 'refused',
      sentence: expect.stringContaining('the shaft is an inch one'),
    })
    expect(answer('sleeve', {}, { position: { ...position, shaftDiameterMm: 87.31 } })).toMatchObject({
      verdict: 'refused',
      sentence: 'H320 is made for a shaft of 90 mm, this one has 87.31 mm.',
    })
  })

  it('refuses an inch nut with a metric washer where no table knows the sleeve', () => {
    const lines = [line('sleeve', 'SX 9'), line('nut', 'AN20'), line('washer', 'MB20')]
    expect(judgeKitCheck(lines, place)[2]).toEqual({
      verdict: 'refused',
      sentence: 'MB20 is metric, AN20 an inch part: inch and metric never go together.',
    })
  })

  it('refuses a sleeve on a plain seat', () => {
    expect(answer('sleeve', {}, { position: { ...position, seat: 'cylindrical' } })).toMatchObject({
      verdict: 'refused',
    })
  })

  it('takes a larger class that the engineer put on the sheet with a reason', () => {
    const larger = { ...bearing, designation: '22220 K/C4', clearanceClass: 'C4' } as const
    expect(answer('bearing', other('22220 K/C4'), { bearing: larger })).toMatchObject({
      verdict: 'asked',
      sentence: expect.stringContaining('the engineer decides'),
    })
  })
})

it('the code that was taken is the planned one, the other one, or none', () => {
  const codes = (['as-planned', 'other', 'missing', 'not-needed'] as const).map((found) =>
    takenCode(line('nut', 'KM20', { found, foundCode: 'KML20' })),
  )
  expect(codes).toEqual(['KM20', 'KML20', null, null])
})
