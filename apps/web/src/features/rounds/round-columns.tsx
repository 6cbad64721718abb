import type { RoundWalkSummary } from '@shaftbook/contract/round-walks'
import type { RoundSummary } from '@shaftbook/contract/rounds'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { Timestamp } from '../../ui/timestamp.tsx'

export function roundColumns(timeZone: string): DataColumn<RoundSummary>[] {
  return [
    { key: 'name', header: 'Round', cell: ({ name }) => name, phone: 'title' },
    { key: 'stops', header: 'Stops', cell: ({ stops }) => stops, align: 'right' },
    { key: 'due', header: 'Due or longer', cell: ({ due }) => (due === 0 ? 'none' : due), align: 'right' },
    {
      key: 'walked',
      header: 'Last walked',
      cell: ({ lastWalkedAt }) =>
        lastWalkedAt ? <Timestamp at={lastWalkedAt} timeZone={timeZone} dateOnly /> : 'never',
    },
    { key: 'note', header: 'Note', cell: ({ note }) => note || '–', phone: 'hidden' },
  ]
}

export function walkColumns(timeZone: string): DataColumn<RoundWalkSummary>[] {
  return [
    {
      key: 'at',
      header: 'Walked',
      cell: ({ startedAt }) => <Timestamp at={startedAt} timeZone={timeZone} />,
      phone: 'title',
    },
    { key: 'who', header: 'By', cell: ({ startedBy }) => startedBy },
    { key: 'done', header: 'Done', cell: ({ done }) => done, align: 'right' },
    { key: 'checked', header: 'Looked at', cell: ({ checked }) => checked, align: 'right' },
    { key: 'skipped', header: 'Skipped', cell: ({ skipped }) => skipped, align: 'right' },
    {
      key: 'open',
      header: 'Left open',
      cell: ({ stops, done, checked, skipped }) => stops - done - checked - skipped,
      align: 'right',
    },
    { key: 'state', header: 'State', cell: ({ endedAt }) => (endedAt ? 'ended' : 'goes on') },
  ]
}
