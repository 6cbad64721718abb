import type { FlagKind } from '@shaftbook/contract/flags'
import { formatCount } from '../../lib/format-count.ts'
import { flagKindOrder, flagKinds, type FlagGroup } from './flag-kinds.ts'

export interface FlagCounts {
  open: number
  putOff: number
  byKind: { kind: FlagKind; open: number }[]
}

const groups: readonly FlagGroup[] = ['Mounts', 'Shafts', 'Greasing']

/** The open flags by kind: "23 open. Mounts: 2 over. Greasing: 20 overdue, 1 never done." */
export function flagCountsSentence({ open, byKind }: FlagCounts): string {
  if (open === 0) return 'Nothing needs anybody now.'
  const counted = groups.flatMap((group) => {
    const parts = flagKindOrder.flatMap((kind) => {
      const count = byKind.find((entry) => entry.kind === kind)?.open ?? 0
      return count > 0 && flagKinds[kind].group === group ? [`${formatCount(count)} ${flagKinds[kind].counted}`] : []
    })
    return parts.length > 0 ? [`${group}: ${parts.join(', ')}.`] : []
  })
  return [`${formatCount(open)} open.`, ...counted].join(' ')
}
