import { formula, type Sourced } from './source.ts'

export interface ShaftPosition {
  tag: string
  locating: boolean
}

export interface LocatingCheck extends Sourced {
  verdict: 'one' | 'none' | 'several' | 'no-positions'
  locatingTags: string[]
  sentence: string
  /** Only the engineer may let it stand, with a reason (springs, back-to-back pairs). */
  needsOverride: boolean
}

/** A shaft has exactly one locating position: none and it floats, several and the bearings fight. R-LOC. */
export function checkLocating(positions: readonly ShaftPosition[]): LocatingCheck {
  const locatingTags = positions.filter((position) => position.locating).map((position) => position.tag)
  const verdict = verdictOf(positions.length, locatingTags.length)
  const sentences: Record<LocatingCheck['verdict'], string> = {
    'no-positions': 'The shaft has no positions yet.',
    none: 'No position on this shaft is locating: the shaft floats. Say which one holds it.',
    one: `${locatingTags.join('')} holds the shaft; the others let it slide.`,
    several: `${locatingTags.join(' and ')} are all locating: the bearings fight when the shaft grows. Only one may be.`,
  }
  return {
    verdict,
    locatingTags,
    sentence: sentences[verdict],
    needsOverride: verdict === 'none' || verdict === 'several',
    source: formula('one locating position per shaft'),
    rule: 'R-LOC',
    cautions: verdict === 'none' || verdict === 'several' ? [sentences[verdict]] : [],
  }
}

function verdictOf(positions: number, locating: number): LocatingCheck['verdict'] {
  if (positions === 0) return 'no-positions'
  if (locating === 0) return 'none'
  return locating === 1 ? 'one' : 'several'
}
