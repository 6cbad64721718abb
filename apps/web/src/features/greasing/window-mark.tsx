import type { WindowResult } from '@shaftbook/contract/greasing'
import classes from './window-mark.module.css'

const results: Record<WindowResult, { word: string; tone: 'good' | 'off' | 'bad' | 'plain' }> = {
  met: { word: 'On time', tone: 'good' },
  early: { word: 'Early', tone: 'off' },
  late: { word: 'Late', tone: 'off' },
  missed: { word: 'Window missed', tone: 'bad' },
  'wrong-amount': { word: 'Wrong amount', tone: 'bad' },
  'no-window': { word: 'No window', tone: 'plain' },
}

/** A window from 8 to 22 on a line, and where the greasing fell. */
const places: Record<WindowResult, string> = {
  met: 'M15 2V10',
  early: 'M4 2V10',
  late: 'M26 2V10',
  missed: 'M25 3l4 6M29 3l-4 6',
  'wrong-amount': 'M12 3l6 6M18 3l-6 6',
  'no-window': 'M15 6h.1',
}

export function windowWord(result: WindowResult): string {
  return results[result].word
}

/** How a greasing met its due window: shape and word. */
export function WindowMark({ result }: { result: WindowResult }) {
  return (
    <span className={classes.mark} data-tone={results[result].tone}>
      <svg viewBox="0 0 30 12" width="30" height="12" aria-hidden="true" focusable="false">
        <path d="M1 6H29" className={classes.line} />
        {result !== 'no-window' && <path d="M8 2v8M22 2v8" className={classes.line} />}
        <path d={places[result]} className={classes.place} />
      </svg>
      <span>{results[result].word}</span>
    </span>
  )
}
