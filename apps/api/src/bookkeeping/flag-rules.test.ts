import { describe, expect, it } from 'vitest'
import { positionFlags, type DueFacts, type FitmentFacts, type MountFacts } from './flag-rules.ts'

const mount: MountFacts = Object.freeze({
  mountRecordId: '00000000-0000-7000-8000-000000000003',
  mountedAt: '2026-03-01T08:00:00Z',
  verdict: 'inside',
  residual: 'enough',
  reductionUm: 52,
  mountedMeanUm: 60,
  bandMinUm: 45,
  bandMaxUm: 60,
  bandSource: 'generic guide',
  residualMinUm: 50,
  expandedUncertaintyUm: 12,
  doAgainReason: null,
})
const fitment: FitmentFacts = Object.freeze({
  fitmentId: '00000000-0000-7000-8000-000000000002',
  fittedAt: '2026-03-01T08:00:00Z',
  designation: '22220 K/C3',
  mount,
})
const due: DueFacts = Object.freeze({
  planId: '00000000-0000-7000-8000-000000000001',
  task: 'regrease',
  state: 'not-due',
  dueOn: '2026-12-01',
  overdueOn: '2026-12-10',
  dueBy: 'calendar',
  dueRunHours: null,
  estimated: false,
  intervalHours: 1000,
  doseG: 20,
  greaseName: 'Grey 2',
})
const withMount = (changes: Partial<MountFacts>): FitmentFacts => ({ ...fitment, mount: { ...mount, ...changes } })
const kinds = (stay: FitmentFacts | null, plan: DueFacts | null): string[] =>
  positionFlags(stay, plan ? [plan] : []).map((flag) => flag.kind)

describe('positionFlags(fitment, due)', () => {
  it('raises nothing for a mount inside its band with enough clearance and a greasing not due', () => {
    expect(kinds(fitment, due)).toEqual([])
  })

  it('raises nothing for an empty position without a plan', () => {
    expect(kinds(null, null)).toEqual([])
  })

  it.each([
    ['over', 'mount-over'],
    ['under', 'mount-under'],
    ['not-proven', 'mount-not-proven'],
  ] as const)('raises for a mount whose verdict is %s the flag %s', (verdict, kind) => {
    expect(kinds(withMount({ verdict }), due)).toEqual([kind])
  })

  it('raises the residual flag beside the verdict flag', () => {
    expect(kinds(withMount({ verdict: 'over', residual: 'too-small' }), due)).toEqual([
      'mount-over',
      'residual-too-small',
    ])
  })

  it('raises a flag of its own for a residual clearance that the gauge cannot prove', () => {
    expect(kinds(withMount({ residual: 'not-proven' }), due)).toEqual(['residual-not-proven'])
  })

  it('carries why the engineer wants the mount done again', () => {
    const facts = (doAgainReason: string | null) =>
      positionFlags(withMount({ verdict: 'over', doAgainReason }), [])[0]?.facts.doAgainReason
    expect([facts('It will run hot'), facts(null)]).toEqual(['It will run hot', undefined])
  })

  it('raises a flag for a bearing without a mount record, and says nothing of its clearance', () => {
    expect(kinds({ ...fitment, mount: null }, due)).toEqual(['no-mount-record'])
  })

  it('puts a mount further over its band before one that is less over', () => {
    const [little] = positionFlags(withMount({ verdict: 'over', reductionUm: 61 }), [])
    const [much] = positionFlags(withMount({ verdict: 'over', reductionUm: 70 }), [])
    expect(much!.urgency).toBeGreaterThan(little!.urgency)
  })

  it.each([
    ['due', []],
    ['due-soon', []],
    ['overdue', ['greasing-overdue']],
    ['missed', ['greasing-overdue']],
    ['never-greased', ['never-greased']],
  ] as const)('raises for a greasing that is %s: %j', (state, expected) => {
    expect(kinds(fitment, { ...due, state })).toEqual(expected)
  })

  it.each(['check-system', 'check-oil', 'change-oil', 'turn-shaft'] as const)(
    'raises a flag of its own for %s that is overdue, below a greasing of the same day',
    (task) => {
      const [flag] = positionFlags(null, [{ ...due, task, state: 'overdue' }])
      const [greasing] = positionFlags(null, [{ ...due, state: 'overdue' }])
      expect(flag).toMatchObject({ kind: 'task-overdue', facts: { task } })
      expect(flag!.urgency).toBeLessThan(greasing!.urgency)
    },
  )

  it('raises a flag for each plan that is overdue', () => {
    const other = {
      ...due,
      planId: '00000000-0000-7000-8000-000000000009',
      task: 'turn-shaft',
      state: 'missed',
    } as const
    const raised = positionFlags(null, [{ ...due, state: 'overdue' }, other])
    expect(raised.map(({ kind, subjectId }) => [kind, subjectId])).toEqual([
      ['greasing-overdue', due.planId],
      ['task-overdue', other.planId],
    ])
  })

  it('puts a longer overdue greasing first, and a missed one before any that is merely overdue', () => {
    const urgency = (state: DueFacts['state'], overdueOn: string): number =>
      positionFlags(null, [{ ...due, state, overdueOn }])[0]!.urgency
    expect(urgency('overdue', '2026-01-10')).toBeGreaterThan(urgency('overdue', '2026-01-11'))
    expect(urgency('missed', '2026-12-31')).toBeGreaterThan(urgency('overdue', '2020-01-01'))
  })

  it('hangs a mount flag on the stay of the bearing, so that the next bearing starts without it', () => {
    const [flag] = positionFlags(withMount({ verdict: 'over' }), [])
    expect(flag!.subjectId).toBe(fitment.fitmentId)
  })
})
