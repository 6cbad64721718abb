import { describe, expect, it } from 'vitest'
import { MountDetails } from './mount-details.ts'

const blanks = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, at) => [`field${at}`, 'no-tool']))

describe('the blanks of a sheet', () => {
  it('are no more than a sheet has numbers', () => {
    expect(MountDetails.safeParse({ blanks: blanks(100) }).success).toBe(true)
    expect(MountDetails.safeParse({ blanks: blanks(101) }).success).toBe(false)
  })
})
