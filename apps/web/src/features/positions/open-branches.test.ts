import { expect, test } from 'vitest'
import { openBranches, toggledBranch } from './open-branches.ts'

test('an address without open branches has none', () => {
  expect(openBranches(undefined).size).toBe(0)
  expect(openBranches('').size).toBe(0)
})

test('a branch that is closed opens beside the others', () => {
  expect(toggledBranch(openBranches('RP~RP02'), 'SL')).toBe('RP~RP02~SL')
})

test('a branch that is open closes, and the last one leaves nothing in the address', () => {
  expect(toggledBranch(openBranches('RP~RP02'), 'RP02')).toBe('RP')
  expect(toggledBranch(openBranches('RP'), 'RP')).toBeUndefined()
})
