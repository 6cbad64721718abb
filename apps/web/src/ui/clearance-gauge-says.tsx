import type { ReactNode } from 'react'
import classes from './clearance-gauge-says.module.css'

export type AdviceMark = 'on' | 'near' | 'stop' | 'too-far' | 'again' | 'ask' | 'none'

/** What the large gauge says: a word, one big figure with what it is, and a sentence. */
export interface GaugeSaying {
  mark: AdviceMark
  word: string
  /** Digits in the person's unit; null where there is nothing to count. */
  figure: string | null
  /** What the figure is: "mm to go". */
  figureIs: string
  sentence: ReactNode
  tone: 'plain' | 'inside' | 'under' | 'over' | 'not-proven'
}

/** The advice in large letters, for gloves and bad light. It is read out when it changes. */
export function GaugeSays({ saying }: { saying: GaugeSaying }) {
  const { mark, word, figure, figureIs, sentence, tone } = saying
  return (
    <output className={classes.says} data-tone={tone} aria-live="polite">
      <span className={classes.word}>
        <AdviceShape mark={mark} />
        {word}
      </span>
      {figure !== null && (
        <span className={classes.figure}>
          <span className={classes.digits}>{figure}</span> <span className={classes.is}>{figureIs}</span>
        </span>
      )}
      <span className={classes.sentence}>{sentence}</span>
    </output>
  )
}

/** A ring on its taper: how far it still has to go to the line. */
function AdviceShape({ mark }: { mark: AdviceMark }) {
  if (mark === 'none') return null
  return (
    <svg viewBox="0 0 28 28" width="28" height="28" className={classes.shape} data-mark={mark} aria-hidden="true">
      {shapes[mark]}
    </svg>
  )
}

const line = <path d="M3 24.5H25" className={classes.line} />

const shapes: Record<Exclude<AdviceMark, 'none'>, ReactNode> = {
  on: (
    <>
      <path d="M14 2V15M14 20l-6-7h12Z" />
      {line}
    </>
  ),
  near: (
    <>
      <path d="M14 11V15M14 21l-6-7h12Z" />
      {line}
    </>
  ),
  stop: (
    <>
      <circle cx="14" cy="14" r="8" />
      {line}
    </>
  ),
  'too-far': (
    <>
      <path d="M3 5.5H25" className={classes.line} />
      <path d="M14 26l-9-15h18Z" />
    </>
  ),
  again: <path d="M22.5 16A8.7 8.7 0 1 1 20 8l2-2v7h-7l2.5-2.5" className={classes.open} />,
  ask: <path d="M14 4L24 14L14 24L4 14Z" className={classes.open} />,
}
