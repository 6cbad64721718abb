import type { ResidualVerdict, Verdict } from '@shaftbook/contract/judgement'
import { inks, type Ink, type Paper } from './paper.ts'

type Shown = Verdict | Exclude<ResidualVerdict, 'no-minimum'>

export const verdictWords: Readonly<Record<Shown, string>> = {
  inside: 'Inside',
  under: 'Under',
  over: 'Over',
  'not-proven': 'Not proven',
  enough: 'Enough',
  'too-small': 'Too small',
}

const tones: Readonly<Record<Shown, Ink & Verdict>> = {
  inside: 'inside',
  enough: 'inside',
  under: 'under',
  over: 'over',
  'too-small': 'over',
  'not-proven': 'not-proven',
}

export function verdictInk(verdict: Shown): Ink {
  return tones[verdict]
}

/** The shape of a verdict round a point: filled circle, triangle down, triangle up, open diamond; about 2 r across. */
export function drawVerdict({ doc }: Paper, verdict: Shown, x: number, y: number, r: number): void {
  const tone = tones[verdict]
  const colour = inks[tone]
  doc.save()
  if (tone === 'inside') doc.circle(x, y, r).fill(colour)
  else if (tone === 'not-proven') {
    doc.polygon([x, y - r], [x + r, y], [x, y + r], [x - r, y])
    doc
      .lineWidth(r * 0.34)
      .lineJoin('round')
      .stroke(colour)
  } else {
    const way = verdict === 'under' ? 1 : -1
    doc.polygon([x - r * 1.1, y - r * 0.85 * way], [x + r * 1.1, y - r * 0.85 * way], [x, y + r * 1.05 * way])
    doc.fill(colour)
  }
  doc.restore()
}
