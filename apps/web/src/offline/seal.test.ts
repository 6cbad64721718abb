import { describe, expect, it } from 'vitest'
import { open, seal } from './seal.ts'

const key = new Uint8Array(32).fill(7)
const other = new Uint8Array(32).fill(8)

describe('a sealed record', () => {
  it('opens again under the same key at the same place', () => {
    const value = { readings: ['0,13', '0,14'], note: 'Größe ✓', none: null }
    expect(open(key, 'drafts/1', seal(key, 'drafts/1', value))).toEqual(value)
  })

  it('opens under no other key, at no other place, and not with a byte changed', () => {
    const sealed = seal(key, 'drafts/1', { serial: 'T-1001' })
    expect(() => open(other, 'drafts/1', sealed)).toThrow('invalid tag')
    expect(() => open(key, 'drafts/2', sealed)).toThrow('invalid tag')
    sealed[sealed.length - 1]! ^= 1
    expect(() => open(key, 'drafts/1', sealed)).toThrow('invalid tag')
  })

  it('shows nothing of what it holds, and never looks the same twice', () => {
    const text = 'a serial number that nobody else reads'
    const [first, second] = [seal(key, 'p', text), seal(key, 'p', text)]
    expect(Buffer.from(first).includes(Buffer.from('serial'))).toBe(false)
    expect(Buffer.from(first)).not.toEqual(Buffer.from(second))
  })
})
