import type { AdviceReason, DriveUpAdvice } from '@shaftbook/bearing/drive-up-advice'
import type { DriveUpGuided } from '@shaftbook/bearing/drive-up-guidance'
import type { TravelFacts, TravelToGo } from '@shaftbook/bearing/drive-up-travel'
import { lengthDigits, lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import type { AdviceMark, GaugeSaying } from '../../ui/clearance-gauge-says.tsx'
import type { DriveUpState } from './drive-up-state.ts'

const words: Record<DriveUpAdvice, { word: string; mark: AdviceMark }> = {
  'read-again': { word: 'Read again', mark: 'again' },
  'go-on': { word: 'Go on', mark: 'on' },
  'nearly-there': { word: 'Nearly there', mark: 'near' },
  'stop-here': { word: 'Stop here', mark: 'stop' },
  'too-far': { word: 'Too far', mark: 'too-far' },
}

const tones: Partial<Record<AdviceReason, GaugeSaying['tone']>> = {
  'less-than-before': 'not-proven',
  inside: 'inside',
  'band-not-proven': 'not-proven',
  'maybe-over': 'not-proven',
  'residual-not-proven': 'not-proven',
  'no-room': 'over',
  'over-band': 'over',
  'residual-too-small': 'over',
}

/** The advice of a drive-up in large letters: a word, the figure that matters now, a sentence. */
export function driveUpSaying({ guidance, asks }: DriveUpState, unit: LengthUnit): GaugeSaying {
  const plain = { figure: null, figureIs: '', tone: 'plain' } as const
  if (asks)
    return {
      ...plain,
      mark: 'ask',
      word: 'Is it meant?',
      sentence: 'Answer the question at the unlikely reading first.',
    }
  if (guidance.kind === 'no-guidance')
    return { ...plain, mark: 'none', word: 'No guidance here', sentence: guidance.sentence }
  if (guidance.kind === 'read-first')
    return { ...plain, mark: 'ask', word: `Read row ${guidance.row}`, sentence: guidance.sentence }
  const { advice, reason } = guidance
  return {
    ...words[advice],
    ...figureOf(guidance, unit),
    sentence: lead(guidance),
    tone: tones[reason] ?? (advice === 'nearly-there' ? 'under' : 'plain'),
  }
}

/** What the word and the figure do not say by themselves. */
function lead({ sentence, next, advice }: DriveUpGuided): string {
  if (advice !== 'stop-here' && advice !== 'read-again') return next
  const rest = sentence.slice(sentence.indexOf(': ') + 2)
  return rest.charAt(0).toUpperCase() + rest.slice(1)
}

function figureOf(guided: DriveUpGuided, unit: LengthUnit): Pick<GaugeSaying, 'figure' | 'figureIs'> {
  const { symbol } = lengthUnits[unit]
  const { advice, reason, left, now, residual, verdict, steps } = guided
  const says = (um: number, what: string) => ({
    figure: lengthDigits(Math.max(0, um), unit),
    figureIs: `${symbol} ${what}`,
  })
  if (advice === 'go-on' || advice === 'nearly-there') return says(left.nearUm, 'to go')
  if (!now) return { figure: null, figureIs: '' }
  if (advice === 'read-again') {
    const most = Math.max(0, ...steps.slice(0, -1).map(({ reductionUm }) => reductionUm))
    return says(most - now.reductionUm, 'looser')
  }
  if (reason === 'over-band' && verdict) return says(now.reductionUm - verdict.maxUm, 'past the band')
  if (reason === 'residual-too-small' && residual && residual.verdict !== 'no-minimum')
    return says(residual.minUm - now.reading.meanUm, 'under the minimum')
  return says(now.reading.meanUm, 'is left')
}

/** What the expected travel goes by, in words. */
export function ratioWords({ ratio }: TravelFacts, bandSource: string): string {
  const range = `${ratio.min.toFixed(1)} to ${ratio.max.toFixed(1)}`
  if (ratio.from === 'this-mount') return `Travel by this mount’s own ratio of travel to reduction so far, ${range}.`
  if (ratio.from === 'band-source') return `Travel by the ratio of travel to reduction in ${bandSource}, ${range}.`
  return `Travel by the usual ratio of travel to reduction, ${range}.`
}

/** A range of travels in mm, such as "0.38 to 0.39". */
export function travelWords({ minMm, maxMm }: TravelToGo): string {
  return rangeOf(minMm.toFixed(2), maxMm.toFixed(2))
}

/** A range of nut angles in whole degrees; null where the pitch is not known. */
export function angleWords({ angleDeg }: TravelToGo): string | null {
  return angleDeg && `${rangeOf(angleDeg.min.toFixed(0), angleDeg.max.toFixed(0))}°`
}

function rangeOf(low: string, high: string): string {
  return low === high ? low : `${low}–${high}`
}
