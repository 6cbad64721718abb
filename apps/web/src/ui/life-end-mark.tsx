import type { FitmentEnd } from './life-strip-geometry.ts'

export const endWords: Record<FitmentEnd, string> = {
  failed: 'failed',
  removed: 'removed, not failed',
  lost: 'end not known',
}

export const lifeLegendEnds = ['failed', 'removed', 'lost'] as const

/** How a life ended, centred on the origin: a cross failed, an open square removed, a dotted ring not known. */
export function LifeEndShape({ end }: { end: FitmentEnd }) {
  if (end === 'failed') return <path d="M-5 -5 5 5M5 -5-5 5" stroke="var(--over)" strokeWidth="2.5" fill="none" />
  if (end === 'removed')
    return <rect x="-4.5" y="-4.5" width="9" height="9" stroke="var(--ink)" strokeWidth="1.5" fill="var(--ground)" />
  return <circle r="4.5" stroke="var(--ink-soft)" strokeWidth="1.5" strokeDasharray="2 2" fill="var(--ground)" />
}
