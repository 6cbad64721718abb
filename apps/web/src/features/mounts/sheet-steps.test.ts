import type { PositionOverview } from '@shaftbook/contract/position-views'
import { describe, expect, it } from 'vitest'
import { asksOf } from './sheet-asks.ts'
import { newSheet } from './sheet-new.ts'
import { sheetScope, stepKeys, stepTitle, type StepKey } from './sheet-steps.ts'

type Seat = PositionOverview['position']['seat']
type Kind = PositionOverview['bearingType']['kind']
interface Here {
  seat?: Seat
  kind?: Kind
  taper?: '1:12' | null
  locating?: boolean
  fitted?: boolean
  sealed?: boolean
  kitLines?: number
}

/** As much of a position as decides what its sheet asks. */
function placeOf(here: Here): PositionOverview {
  const { seat = 'adapter-sleeve', kind = 'spherical-roller', taper = '1:12', locating = true } = here
  const { fitted = true, sealed = false, kitLines = 1 } = here
  return {
    position: { seat, locating },
    bearingType: { id: 'type', kind, taper, sealed, boreMm: 100, widthMm: 46 },
    fitment: fitted ? { id: 'stay' } : null,
    kit: kitLines > 0 ? { lines: Array.from({ length: kitLines }, (_, at) => ({ id: `line-${at}` })) } : null,
    plan: null,
    meter: null,
  } as unknown as PositionOverview
}

const start = { personName: 'Mara Voss', unit: 'mm' as const, timeZone: 'Europe/Berlin', now: new Date() }

/** The steps of a sheet at such a position, and the fields that they ask. */
function askedAt(here: Here, purpose: 'new' | 'correction' = 'new') {
  const place = placeOf(here)
  const sheet = newSheet({ ...start, place })
  const scope = sheetScope(purpose, place, place.bearingType, sheet.method)
  const facts = { hasMeter: false, kitLineIds: place.kit?.lines.map(({ id }) => id) ?? [] }
  return { steps: scope.steps, asked: asksOf(scope, sheet, facts).map(({ key }) => key), scope, sheet, facts }
}

const without = (...left: StepKey[]) => stepKeys.filter((step) => !left.includes(step))

describe('sheetScope(purpose, place, type, method)', () => {
  it('has every step for a spherical roller bearing on an adapter sleeve where one is fitted already', () => {
    expect(askedAt({}).steps).toEqual(stepKeys)
  })
  it.each<[string, Here, StepKey[]]>([
    ['nothing fitted before: nothing to strip', { fitted: false }, without('strip')],
    [
      'a cylindrical seat without a kit: no sleeve, no nut',
      { seat: 'cylindrical', taper: null, kitLines: 0 },
      without('kit', 'lock'),
    ],
    ['a cylindrical seat with a kit: it is compared', { seat: 'cylindrical', taper: null }, without('lock')],
    ['a tapered journal: its nut is locked', { seat: 'tapered-journal' }, without()],
    ['a withdrawal sleeve', { seat: 'withdrawal-sleeve' }, without()],
    [
      'a sealed bearing: it brings its own grease',
      { seat: 'cylindrical', taper: null, kind: 'deep-groove-ball', sealed: true },
      without('lock', 'grease'),
    ],
  ])('%s', (_name, here, steps) => {
    expect(askedAt(here).steps).toEqual(steps)
  })
  it('a correction is written afterwards: the removal is a record of its own', () => {
    expect(askedAt({}, 'correction').steps).toEqual(without('strip'))
  })
})

describe('asksOf(scope, sheet, facts)', () => {
  it('asks for sleeve, nut and lock by their codes only where no kit says them', () => {
    const codes = ['sleeveCode', 'nutCode', 'lockingCode']
    expect(askedAt({}).asked).not.toEqual(expect.arrayContaining(codes))
    expect(askedAt({ kitLines: 0 }).asked).toEqual(expect.arrayContaining(codes))
    const journal = askedAt({ seat: 'tapered-journal', kitLines: 0 }).asked
    expect(codes.filter((key) => journal.includes(key))).toEqual(['nutCode', 'lockingCode'])
  })
  it('asks for rings at a locating position only', () => {
    expect(askedAt({ locating: true }).asked).toContain('ringCount')
    expect(askedAt({ locating: false }).asked).not.toContain('ringCount')
  })
  it('asks for the width and place of rings once some are put in', () => {
    const { scope, sheet, facts } = askedAt({})
    const keys = asksOf(scope, { ...sheet, ringCount: '2' }, facts).map(({ key }) => key)
    expect(keys).toEqual(expect.arrayContaining(['ringWidthMm', 'ringsPlaced']))
  })
  it('asks for no diameter of a tapered journal', () => {
    expect(askedAt({ seat: 'tapered-journal' }).asked).not.toContain('shaft.1x')
    expect(askedAt({ seat: 'withdrawal-sleeve' }).asked).toContain('shaft.1x')
  })
  it.each<[Kind, boolean]>([
    ['spherical-roller', true],
    ['cylindrical-roller', true],
    ['deep-groove-ball', false],
    ['tapered-roller', false],
    ['angular-contact-ball', false],
  ])('a %s has a clearance that feelers read: %s', (kind, read) => {
    const asked = askedAt({ seat: 'cylindrical', taper: null, kind }).asked
    expect([asked.includes('bench.0.A'), asked.includes('mounted.0.A')]).toEqual([read, read])
  })
  it('takes a self-aligning ball bearing by feel: a person instead of readings, travel all the same', () => {
    const { asked, sheet } = askedAt({ kind: 'self-aligning-ball' })
    expect(sheet.method).toBe('by-feel')
    expect(asked).not.toContain('mounted.0.A')
    expect(asked).toEqual(expect.arrayContaining(['byFeelPerson', 'driveUpMm']))
  })
  it('asks for no travel where nothing is driven up', () => {
    expect(askedAt({ seat: 'cylindrical', taper: null }).asked).not.toContain('driveUpMm')
  })
})

describe('stepTitle(step, scope)', () => {
  it('names what is done there', () => {
    const title = (step: StepKey, here: Here) => stepTitle(step, askedAt(here).scope)
    expect(title('drive', {})).toBe('Drive up')
    expect(title('drive', { seat: 'cylindrical', taper: null })).toBe('Fit the bearing')
    expect(title('rings', { locating: false })).toBe('Seals')
  })
})
