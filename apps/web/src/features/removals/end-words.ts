import type { EndKind, Removal } from '@shaftbook/contract/removals'

/** How a bearing's stay can end, and what each means (R-CENS). */
export const endWords: Readonly<Record<EndKind, { word: string; meaning: string }>> = {
  failed: {
    word: 'Failed',
    meaning:
      'It lost its function, or its condition forced the change: a bearing changed on a vibration alarm has failed.',
  },
  'not-failed': {
    word: 'Removed, not failed',
    meaning: 'It could have run on: a planned change, a move, or it came out because its sister failed.',
  },
  lost: {
    word: 'Lost from the record',
    meaning: 'It is not here any more, and nobody can say how or why it left.',
  },
}

/** The failure mode in words, with its clause of ISO 15243. */
export function modeWords({ modeTerm, modeClause }: Pick<Removal, 'modeTerm' | 'modeClause'>): string {
  return modeTerm === null ? 'mode not found out' : `${modeTerm} (${modeClause})`
}
