import { usualChoice, type LabelChoice } from '../../features/labels/label-choice.ts'

const key = 'shaftbook.labels'

/** The paper that was chosen in this browser the last time. */
export function keptChoice(): Partial<LabelChoice> {
  const text = localStorage.getItem(key)
  if (text === null) return {}
  const kept = new URLSearchParams(text)
  const known = Object.keys(usualChoice).filter((name) => kept.has(name) && name !== 'start' && name !== 'paper')
  const paper = kept.get('paper')
  return {
    ...Object.fromEntries(known.map((name) => [name, kept.get(name) ?? ''])),
    ...((paper === 'roll' || paper === 'a4') && { paper }),
  }
}

/** Keeps the paper; the first free label is another one each time. */
export function keepChoice(choice: LabelChoice): void {
  localStorage.setItem(key, new URLSearchParams({ ...choice, start: '1' }).toString())
}
