import type { ReadStep } from './drive-up-steps.ts'
import type { DriveUpWindow } from './drive-up-window.ts'
import { formatLength, toNanometres, type LengthUnit } from './units.ts'
import type { ReductionVerdict, ResidualVerdict } from './verdict.ts'

/** What to do now, from the earliest to the latest: a larger reduction never gives an earlier one. */
export const driveUpAdvices = ['read-again', 'go-on', 'nearly-there', 'stop-here', 'too-far'] as const
export type DriveUpAdvice = (typeof driveUpAdvices)[number]

export type AdviceReason =
  /** Less reduction than before, by more than the gauge's uncertainty. */
  | 'less-than-before'
  | 'short-of-window'
  | 'inside'
  /** Inside as read, not by the site's rule. */
  | 'band-not-proven'
  /** Past the far edge as read; the gauge can't tell. */
  | 'maybe-over'
  | 'residual-not-proven'
  /** The residual minimum is reached before the band. */
  | 'no-room'
  | 'over-band'
  | 'residual-too-small'

export interface AdviceFacts {
  /** The newest step; null before the first. */
  now: ReadStep | null
  verdict: ReductionVerdict | null
  residual: ResidualVerdict | null
  window: DriveUpWindow
  band: { maxUm: number }
  /** µm. A reduction below this is less than before by more than the gauge's uncertainty. */
  leastLikelyUm: number
  /** µm. A smaller step can't be told from none. */
  smallestStepUm: number
}

export interface Decided {
  advice: DriveUpAdvice
  reason: AdviceReason
}

/** The one advice for a state of a drive-up. It agrees with the verdicts of the newest step. R-RED, R-RES, R-U. */
export function adviceOf(facts: AdviceFacts): Decided {
  const { now, verdict, residual, window } = facts
  const reduced = nm(now?.reductionUm ?? 0)
  if (verdict?.verdict === 'over') return { advice: 'too-far', reason: 'over-band' }
  if (residual?.verdict === 'too-small') return { advice: 'too-far', reason: 'residual-too-small' }
  if (reduced < nm(facts.leastLikelyUm)) return { advice: 'read-again', reason: 'less-than-before' }
  if (window.noRoom) return { advice: 'stop-here', reason: 'no-room' }
  if (reduced >= nm(window.nearUm)) return { advice: 'stop-here', reason: stopReason(facts, reduced) }
  const close = nm(window.nearUm) - reduced <= nm(facts.smallestStepUm)
  return { advice: now && close ? 'nearly-there' : 'go-on', reason: 'short-of-window' }
}

function stopReason({ verdict, residual, band }: AdviceFacts, reducedNm: number): AdviceReason {
  if (verdict?.verdict === 'not-proven') return reducedNm > nm(band.maxUm) ? 'maybe-over' : 'band-not-proven'
  return residual?.verdict === 'not-proven' ? 'residual-not-proven' : 'inside'
}

/** The advice in plain words: how it stands, and what to do next. */
export interface AdviceWords {
  stands: string
  next: string
}

/** The advice for a person at the shaft, lengths in the wanted unit. R-TAB: a nut only ever goes forward. */
export function adviceWords(facts: AdviceFacts, decided: Decided, unit: LengthUnit): AdviceWords {
  const { now, window } = facts
  const say = (um: number): string => formatLength(um, unit)
  const reduced = now?.reductionUm ?? 0
  const range = `between ${formatLength(window.bottomUm, unit, { withUnit: false })} and ${say(window.topUm)}`
  const left = `${say(window.nearUm - reduced)} to the window.`
  switch (decided.advice) {
    case 'read-again': {
      const next = 'Turn the ring until the rollers seat, and read both rows again.'
      if (reduced < 0) return { stands: `Read again: looser than on the bench, by ${say(-reduced)}.`, next }
      return { stands: 'Read again: less reduction than at an earlier step.', next }
    }
    case 'go-on':
      if (now) return { stands: `Go on: ${left}`, next: `Stop with the clearance ${range}.` }
      return { stands: `Go on: ${left}`, next: `Drive in steps, read both rows after each, stop ${range}.` }
    case 'nearly-there':
      return { stands: `Nearly there: ${left}`, next: `Small steps now, both rows after each. Stop ${range}.` }
    case 'stop-here':
      return stopWords(facts, decided.reason, say)
    default:
      return {
        stands: `Too far: ${tooFar(facts, decided.reason, say)}`,
        next: 'Start again with another bearing; the engineer decides on this one.',
      }
  }
}

function stopWords(facts: AdviceFacts, reason: AdviceReason, say: (um: number) => string): AdviceWords {
  switch (reason) {
    case 'no-room': {
      const short = say(facts.window.nearUm - facts.window.roomUm)
      return {
        stands: `Stop here: the least clearance is reached ${short} before the band.`,
        next: `${facts.now ? 'Drive no further' : 'Don’t start'}: the engineer decides.`,
      }
    }
    case 'residual-not-proven':
      return {
        stands: 'Stop here: inside the band, but the gauge can’t prove that enough clearance is left.',
        next: 'Read more places, or the engineer decides.',
      }
    case 'band-not-proven':
      return {
        stands: 'Stop here: inside the band as read, not yet proven.',
        next: 'Read more places before you lock the nut.',
      }
    case 'maybe-over':
      return {
        stands: 'Stop here: this may be past the band, the gauge can’t tell.',
        next: 'Read more places; the engineer decides.',
      }
    default:
      return { stands: 'Stop here: inside the band.', next: 'Lock the nut, forward to the next slot.' }
  }
}

function tooFar({ now, band, residual }: AdviceFacts, reason: AdviceReason, say: (um: number) => string): string {
  if (reason === 'over-band') return `${say((now?.reductionUm ?? 0) - band.maxUm)} past the band.`
  const least = residual?.verdict === 'no-minimum' || !residual ? 0 : residual.minUm
  return `less clearance is left than the residual minimum of ${say(least)}.`
}

function nm(um: number): number {
  return toNanometres(um, 'um')
}
