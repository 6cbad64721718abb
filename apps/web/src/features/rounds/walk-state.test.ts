import type { Round, RoundStop } from '@shaftbook/contract/rounds'
import { describe, expect, it } from 'vitest'
import {
  countWalk,
  isWrongGun,
  newWalk,
  nextOpen,
  stopBody,
  stopFaults,
  typedDoseG,
  type StopEntry,
} from './walk-state.ts'

const stop = (id: string, over: Partial<RoundStop> = {}): RoundStop => ({
  id,
  positionId: `p-${id}`,
  task: 'regrease',
  tag: `P-${id}`,
  positionName: 'Drive end',
  machineId: 'm',
  machineTag: 'M-1',
  machineName: 'Elevator',
  areaId: 'a',
  areaName: 'Gallery',
  planId: 'plan',
  greaseId: 'lithium',
  greaseName: 'Lithium 2',
  doseG: 42,
  entry: 'side',
  dueState: 'due',
  dueOn: '2026-03-01',
  lastGreasedAt: null,
  ...over,
})
const gun = { id: 'gun', name: 'Gun 2', gramsPerStroke: 1.2, greaseId: 'lithium' }
let made = 0
const walkOf = (...stops: RoundStop[]) =>
  newWalk({ id: 'r', name: 'East', stops } as Round, () => `id-${(made += 1)}`, new Date('2026-03-02T08:00:00Z'))
const entryOf = (over: Partial<StopEntry> = {}): StopEntry => ({ ...walkOf(stop('1')).entries['1']!, ...over })

describe('a walk', () => {
  it('goes on to the next stop without a result, and past the last to the summary', () => {
    const walk = walkOf(stop('1'), stop('2'), stop('3'))
    walk.entries['2']!.outcome = 'skipped'
    expect(nextOpen(walk, 0)).toBe(2)
    expect(nextOpen(walk, 2)).toBe(3)
    walk.entries['1']!.outcome = 'done'
    walk.entries['3']!.outcome = 'checked'
    expect(nextOpen(walk, 0)).toBe(3)
    expect(countWalk(walk)).toEqual({ done: 1, checked: 1, skipped: 1, open: 0 })
  })
})

describe('a gun', () => {
  it('is wrong where another grease, or nobody knows which, is in it; never where no grease goes in', () => {
    expect(isWrongGun(stop('1'), gun)).toBe(false)
    expect(isWrongGun(stop('1'), { ...gun, greaseId: 'calcium' })).toBe(true)
    expect(isWrongGun(stop('1'), { ...gun, greaseId: null })).toBe(true)
    expect(isWrongGun(stop('1', { task: 'check-oil', greaseId: null }), { ...gun, greaseId: 'calcium' })).toBe(false)
    expect(isWrongGun(stop('1'), null)).toBe(false)
  })
})

describe('a stop', () => {
  it('counts its dose in strokes of the gun, or takes grams with comma or point', () => {
    expect(typedDoseG(entryOf({ strokes: '35' }), gun)).toBe(42)
    expect(typedDoseG(entryOf({ grams: '12,5' }), null)).toBe(12.5)
    expect(typedDoseG(entryOf(), gun)).toBeUndefined()
  })

  it.each([
    ['no strokes', { strokes: '' }, 'done', ['strokes']],
    ['half a stroke', { strokes: '3.5' }, 'done', ['strokes']],
    ['53 strokes are over 63 g', { strokes: '53' }, 'done', ['overdoseConfirmed', 'extraReason']],
    ['an overdose that is meant', { strokes: '53', overdoseConfirmed: true, extraReason: 'Milky' }, 'done', []],
    ['skipped without a reason', {}, 'skipped', ['reason']],
    ['only looked at', {}, 'checked', []],
    ['a temperature that is none', { temperatureC: 'warm' }, 'checked', ['temperatureC']],
  ] as const)('%s', (_, over, outcome, fields) => {
    expect(Object.keys(stopFaults(stop('1'), entryOf(over), gun, outcome))).toEqual([...fields])
  })

  it('sends strokes with what one gives, and says yes to an overdose only where there is one', () => {
    const entry = entryOf({ strokes: '35', relief: 'closed', oldGrease: 'dark', overdoseConfirmed: true })
    expect(stopBody(stop('1'), entry, gun, 'done')).toMatchObject({
      outcome: 'done',
      overdoseConfirmed: false,
      oldGrease: 'dark',
      reliefClosed: true,
      greasing: { greaseId: 'lithium', gunId: 'gun', strokes: 35, gramsPerStroke: 1.2 },
    })
    expect(stopBody(stop('1'), entry, gun, 'skipped').greasing).toBeNull()
    expect(stopBody(stop('1', { task: 'check-oil' }), entry, gun, 'done').greasing).toEqual({ id: entry.greasingId })
  })
})
