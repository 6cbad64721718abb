import { array, assert, constantFrom, integer, property, record } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../domain-error.ts'
import { judgeLines } from './judge-lines.ts'

const start = Date.UTC(2026, 0, 1)
const hourMs = 3_600_000
const day = (at: Date): string => at.toISOString().slice(0, 10)

/** What happens between two looks at a meter: the machine runs some hours of some days, and the meter may be exchanged. */
const spells = array(
  record({
    days: integer({ min: 1, max: 30 }),
    hoursPerDay: integer({ min: 0, max: 24 }),
    exchanged: constantFrom(false, false, true),
  }),
  { minLength: 1, maxLength: 25 },
)
const rolloverAtHours = 1000

/** The lines that a person writes who looks at the display after each spell, with the hours that truly ran. */
function watch(all: { days: number; hoursPerDay: number; exchanged: boolean }[], rollsOver: boolean) {
  let [at, ran, display] = [start, 0, 100]
  const show = (): number => (rollsOver ? display % rolloverAtHours : display)
  const lines = [{ line: entry(show()), at, ran }]
  for (const { days, hoursPerDay, exchanged } of all) {
    // a display that rolls over twice between two looks cannot be known
    const hours = Math.min(days * hoursPerDay, rolloverAtHours - 1)
    at += days * 24 * hourMs
    ran += hours
    display += hours
    lines.push({ line: entry(show(), exchanged ? 7 : null), at, ran })
    if (exchanged) display = 7
  }
  return lines.map(({ line, at: ms, ran: hours }, number) => ({ number, line, readAt: new Date(ms), hours }))
}

function entry(shownHours: number, newMeterShowsHours: number | null = null) {
  const kind = newMeterShowsHours === null ? ('reading' as const) : ('exchange' as const)
  return { id: crypto.randomUUID(), kind, shownHours, newMeterShowsHours }
}

describe('the hours of a machine over its readings', () => {
  it.each([true, false])(
    'lose and invent none at exchanges and rollovers (a display that rolls over: %s)',
    (rollsOver) => {
      assert(
        property(spells, (all) => {
          const lines = watch(all, rollsOver)
          const judged = judgeLines(lines, [], rollsOver ? rolloverAtHours : null, day)
          const first = lines[0]!.line.shownHours
          expect(judged.map(({ verdict }) => verdict)).toEqual(lines.map(({ hours }) => first + hours))
        }),
      )
    },
  )

  it('come out the same whether the lines come in one batch, one by one, or turned round', () => {
    assert(
      property(spells, (all) => {
        const lines = watch(all, false)
        const whole = judgeLines(lines, [], null, day).map(({ verdict }) => verdict)
        const turned = judgeLines(lines.toReversed(), [], null, day).map(({ verdict }) => verdict)
        expect(turned).toEqual(whole)
      }),
    )
  })

  it('a line that cannot be is refused with its sentence, and those after it are judged without it', () => {
    const lines = [0, 10, 20].map((days, number) => ({
      number,
      line: entry([100, 90, 200][number]!),
      readAt: new Date(start + days * 24 * hourMs),
    }))
    const [first, second, third] = judgeLines(lines, [], null, day).map(({ verdict }) => verdict)
    expect([first, third]).toEqual([100, 200])
    expect(second).toBeInstanceOf(DomainError)
    expect((second as DomainError).code).toBe('meter-backwards')
  })

  it('a second reading of the same moment is refused where it shows something else', () => {
    const lines = [100, 101].map((shown, number) => ({ number, line: entry(shown), readAt: new Date(start) }))
    const [first, second] = judgeLines(lines, [], null, day).map(({ verdict }) => verdict)
    expect(first).toBe(100)
    expect((second as DomainError).fields[0]?.path).toBe('readAt')
  })
})
