import type { Kit } from '@shaftbook/contract/kits'
import { describe, expect, it } from 'vitest'
import { fittedCode, kitCheckLines, lineOfCode, withKitLine } from './kit-check.ts'
import type { Sheet } from './sheet.ts'

const kit = {
  lines: [
    { id: 'a', kind: 'bearing', designation: '22220 K/C3', partNumber: 'HP-1001' },
    { id: 'b', kind: 'sleeve', designation: 'H320', partNumber: 'HP-1002' },
    { id: 'c', kind: 'clip', designation: 'MS3044', partNumber: 'HP-1003' },
  ],
} as unknown as Kit
const sheet = (over: Partial<Sheet> = {}) =>
  ({ kitCheck: {}, sleeveCode: '', nutCode: 'KM20', lockingCode: '', ...over }) as Sheet

describe('lineOfCode(kit, code)', () => {
  it.each([
    ['22220k/c3', 'a'],
    [' 22220 K/C3 ', 'a'],
    ['HP-1002', 'b'],
    ['hp-1003', 'c'],
  ])('%s is line %s', (code, id) => expect(lineOfCode(kit, code)?.id).toBe(id))
  it.each(['', '  ', 'H2320', '22220'])('"%s" is none of them', (code) => expect(lineOfCode(kit, code)).toBeNull())
})

describe('kitCheckLines(sheet, kit)', () => {
  it('leaves out the reason for another part once the planned one is here after all', () => {
    const other = sheet(
      withKitLine(sheet(), 'b', { found: 'other', foundCode: 'H2320', reason: 'Only one in the bin' }),
    )
    expect(kitCheckLines(other, kit)).toMatchObject([{ foundCode: 'H2320', reason: 'Only one in the bin' }])
    const here = sheet(withKitLine(other, 'b', { found: 'as-planned' }))
    expect(kitCheckLines(here, kit)).toMatchObject([{ foundCode: 'H320', reason: '' }])
  })
})

describe('fittedCode(sheet, kit, at)', () => {
  it('is nothing while the line is not looked at', () => expect(fittedCode(sheet(), kit, 'sleeveCode')).toBe(''))
  it('is the planned one where it is here', () => {
    const here = sheet(withKitLine(sheet(), 'b', { found: 'as-planned' }))
    expect(fittedCode(here, kit, 'sleeveCode')).toBe('H320')
  })
  it('is the other one that was taken', () => {
    const other = sheet(withKitLine(sheet(), 'b', { found: 'other', foundCode: ' H2320 ' }))
    expect(fittedCode(other, kit, 'sleeveCode')).toBe('H2320')
  })
  it('a clip locks as a washer does', () => {
    const clip = sheet(withKitLine(sheet(), 'c', { found: 'as-planned' }))
    expect(fittedCode(clip, kit, 'lockingCode')).toBe('MS3044')
  })
  it('is what was typed where the kit has no such line', () => expect(fittedCode(sheet(), kit, 'nutCode')).toBe('KM20'))
})
