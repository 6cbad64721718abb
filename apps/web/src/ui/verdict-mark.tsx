import classes from './verdict-mark.module.css'

export type Verdict = 'inside' | 'under' | 'over' | 'not-proven'
export type ResidualVerdict = 'enough' | 'too-small' | 'not-proven'

const words: Record<Verdict | ResidualVerdict, string> = {
  inside: 'Inside',
  under: 'Under',
  over: 'Over',
  'not-proven': 'Not proven',
  enough: 'Enough',
  'too-small': 'Too small',
}

const meanings: Record<Verdict | ResidualVerdict, string> = {
  inside: 'the reduction is inside its band',
  under: 'the reduction is under its band',
  over: 'the reduction is over its band',
  'not-proven': 'the gauge cannot tell',
  enough: 'enough clearance is left',
  'too-small': 'too little clearance is left',
}

/** The verdict as one word. */
export function verdictWord(verdict: Verdict | ResidualVerdict): string {
  return words[verdict]
}

/** The verdict as a short clause, for sentences and text alternatives. */
export function verdictMeaning(verdict: Verdict | ResidualVerdict): string {
  return meanings[verdict]
}

const tones = {
  inside: 'inside',
  enough: 'inside',
  under: 'under',
  over: 'over',
  'too-small': 'over',
  'not-proven': 'not-proven',
} as const

/** The token colour that goes with a verdict. */
export function verdictColour(verdict: Verdict | ResidualVerdict): string {
  return `var(--${tones[verdict]})`
}

/** The verdict's shape, centred on the origin, about 2 × `r` across; for use inside a drawing. */
export function VerdictShape({ verdict, r }: { verdict: Verdict | ResidualVerdict; r: number }) {
  const fill = verdictColour(verdict)
  const tone = tones[verdict]
  if (tone === 'inside') return <circle r={r} fill={fill} />
  if (tone === 'not-proven') {
    const tip = r * 1.05
    const diamond = `M0 ${-tip}L${tip} 0L0 ${tip}L${-tip} 0Z`
    return <path d={diamond} fill="none" stroke={fill} strokeWidth={r * 0.36} strokeLinejoin="round" />
  }
  const way = verdict === 'over' ? -1 : 1
  return <path d={`M${-r * 1.1} ${-r * 0.85 * way}H${r * 1.1}L0 ${r * 1.05 * way}Z`} fill={fill} />
}

interface VerdictMarkProps {
  verdict: Verdict | ResidualVerdict
  size?: 's' | 'm' | 'l'
  /** What the verdict is about, read before the word: "Residual". */
  about?: string
}

/** Shape and word of a verdict. The word is always there: a verdict is never colour alone. */
export function VerdictMark({ verdict, size = 'm', about }: VerdictMarkProps) {
  return (
    <span className={classes.mark} data-size={size}>
      <svg viewBox="-8 -8 16 16" className={classes.shape} aria-hidden="true" focusable="false">
        <VerdictShape verdict={verdict} r={6} />
      </svg>
      <span style={{ color: verdictColour(verdict) }}>
        {about ? `${about}: ${words[verdict].toLowerCase()}` : words[verdict]}
      </span>
    </span>
  )
}
