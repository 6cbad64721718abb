import { describe, expect, it } from 'vitest'
import { scannedPlace } from './scanned-place.ts'
import { tagged } from './scan-queries.ts'

describe('scannedPlace(scanned, siteCode)', () => {
  it('reads the address on a label, whatever its host', () => {
    const place = { kind: 'position', reference: 'BE-101 / H' }
    expect(scannedPlace('https://book.example/harrow-point/at/BE-101%20%2F%20H', 'harrow-point')).toEqual(place)
    expect(scannedPlace('http://10.0.0.7:4380/harrow-point/at/BE-101%20%2F%20H', 'harrow-point')).toEqual(place)
  })

  it('takes a bare tag, with the spaces and the line end that a scanner types', () => {
    expect(scannedPlace('  BE-101 H\n', 'harrow-point')).toEqual({ kind: 'position', reference: 'BE-101 H' })
  })

  it('names the site of a label of another site', () => {
    expect(scannedPlace('https://book.example/sallow-quay/at/SL-1', 'harrow-point')).toEqual({
      kind: 'other-site',
      siteCode: 'sallow-quay',
      reference: 'SL-1',
    })
  })

  it('follows the code on a printed mount record', () => {
    const text = 'https://book.example/harrow-point/mounts/01936b4e'
    expect(scannedPlace(text, 'harrow-point')).toEqual({ kind: 'page', path: '/harrow-point/mounts/01936b4e' })
  })

  it.each([
    'https://shop.example/22220-K',
    'https://book.example/harrow-point/at/a/b',
    'https://book.example/%E0%A4%A/at/x',
    'ftp://book.example/harrow-point/at/x',
    'BEGIN:VCARD\nFN:Somebody',
    'x'.repeat(121),
    '',
  ])('says that %j is no label', (text) => {
    expect(scannedPlace(text, 'harrow-point').kind).toBe('foreign')
  })
})

describe('tagged(items, reference)', () => {
  const items = [
    { id: '1', tag: 'BE-10' },
    { id: '2', tag: 'BE-1' },
    { id: '3', tag: 'be-1' },
  ]
  it('takes the whole tag, not a part of it', () => {
    expect(tagged(items, 'BE-10')?.id).toBe('1')
    expect(tagged(items, 'E-1')).toBeNull()
  })
  it('prefers the tag that is written the same, and finds one with other spaces and letters', () => {
    expect(tagged(items, 'be-1')?.id).toBe('3')
    expect(tagged(items, 'Be - 10')?.id).toBe('1')
  })
})
