import { formatLength, formatLengthRange, lengthDigits, type LengthUnit } from '../lib/length-units.ts'
import { roundingUm, targetWindow, type GaugeInput } from './clearance-gauge-geometry.ts'

export interface GaugeWords {
  headline: string
  detail: string
  tone: 'plain' | 'inside' | 'under' | 'over'
}

/** What the gauge says now: how much further, inside, or too far, as read. It is not the verdict, which knows the gauge's uncertainty. */
export function gaugeWords(input: GaugeInput, unit: LengthUnit): GaugeWords {
  const window = targetWindow(input)
  if (input.benchUm === null)
    return plain('No bench clearance yet', 'Measure the bearing on the bench first, in both rows.')
  if (window === null || input.bandUm === null)
    return plain(
      'No band for this position',
      `Bench clearance is ${formatLength(input.benchUm, unit)}. Without a band nobody can say where to stop: ask the engineer for one.`,
    )
  const stop = `between ${lengthDigits(window.bottomUm, unit)} and ${formatLength(window.topUm, unit)}`
  if (input.meanUm === null) {
    const taken = formatLengthRange(input.bandUm.minUm, input.bandUm.maxUm, unit)
    return plain(
      `Stop ${stop}`,
      `Bench clearance is ${formatLength(input.benchUm, unit)}; the band takes out ${taken}.`,
    )
  }
  return progress(input, input.meanUm, window, stop, unit)
}

/** What the gauge of a record says: what was measured, and the window it was to finish in. */
export function pastGaugeWords(input: GaugeInput, unit: LengthUnit): GaugeWords {
  const window = targetWindow(input)
  const say = (um: number | null): string => (um === null ? 'not read' : formatLength(um, unit))
  const headline = `${say(input.benchUm)} on the bench, ${say(input.meanUm)} mounted`
  if (window === null) return plain(headline, 'No window is known.')
  const range = `${lengthDigits(window.bottomUm, unit)} to ${formatLength(window.topUm, unit)}`
  return plain(headline, `The window was ${range}.`)
}

function plain(headline: string, detail: string): GaugeWords {
  return { headline, detail, tone: 'plain' }
}

function progress(
  input: GaugeInput,
  meanUm: number,
  window: { topUm: number; bottomUm: number },
  stop: string,
  unit: LengthUnit,
): GaugeWords {
  const say = (um: number) => formatLength(um, unit)
  const now = `Now ${say(meanUm)}.`
  const after = [oneRow(input), residual(input, meanUm, say)].filter(Boolean)
  const join = (...parts: string[]) => [...parts, ...after].join(' ')
  if (input.benchUm !== null && meanUm > input.benchUm)
    return {
      headline: 'Larger than on the bench',
      detail: join(now, 'A mounted bearing cannot be looser than before: read both rows again.'),
      tone: 'under',
    }
  if (meanUm > window.topUm + roundingUm)
    return { headline: `${say(meanUm - window.topUm)} to go`, detail: join(now, `Stop ${stop}.`), tone: 'under' }
  if (meanUm < window.bottomUm - roundingUm)
    return {
      headline: `${say(window.bottomUm - meanUm)} too far`,
      detail: join(now, `Drive no further: the clearance was to stay ${stop}. The engineer decides.`),
      tone: 'over',
    }
  if (oneRow(input) !== '')
    return { headline: 'In the window by one row', detail: join(now, 'Do not lock the nut yet.'), tone: 'plain' }
  return { headline: 'In the window', detail: join(now, 'Stop here, then lock the nut.'), tone: 'inside' }
}

function oneRow({ readings }: GaugeInput): string {
  const rows = new Set(readings.map(({ row }) => row))
  if (rows.size !== 1) return ''
  return rows.has('A') ? 'Only row A is read: read row B too.' : 'Only row B is read: read row A too.'
}

function residual({ residualMinUm }: GaugeInput, meanUm: number, say: (um: number) => string): string {
  if (residualMinUm === null || meanUm >= residualMinUm - roundingUm) return ''
  return `This is under the residual minimum of ${say(residualMinUm)}.`
}
