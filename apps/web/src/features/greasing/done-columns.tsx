import { Button } from '@mantine/core'
import type { Greasing } from '@shaftbook/contract/greasing'
import { paths } from '../../paths.ts'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { taskWords } from './task-words.ts'
import { WindowMark } from './window-mark.tsx'

interface DoneColumns {
  site: string
  timeZone: string
  /** Absent where the role does not correct greasings. */
  onCorrect: ((greasing: Greasing) => void) | undefined
}

/** The columns of what was greased. */
export function doneColumns({ site, timeZone, onCorrect }: DoneColumns): DataColumn<Greasing>[] {
  return [
    {
      key: 'tag',
      header: 'Position',
      phone: 'title',
      cell: (row) => <AppLink href={paths.position(site, row.positionId)}>{row.tag}</AppLink>,
    },
    { key: 'window', header: 'Window', phone: 'aside', cell: (row) => <WindowMark result={row.windowResult} /> },
    {
      key: 'dose',
      header: 'Dose',
      cell: (row) => {
        if (row.doseG === null) return taskWords[row.task]
        return row.plannedDoseG === null ? `${row.doseG} g` : `${row.doseG} g of ${row.plannedDoseG} g planned`
      },
    },
    {
      key: 'grease',
      header: 'Grease',
      cell: (row) => (row.kind === 'initial-fill' ? `${row.greaseName}, first fill` : (row.greaseName ?? '–')),
    },
    {
      key: 'at',
      header: 'Greased',
      cell: (row) => <Timestamp at={row.greasedAt} timeZone={timeZone} relative={false} />,
    },
    {
      key: 'by',
      header: 'By',
      cell: (row) => (row.correctionReason ? `${row.signedBy}, corrected: ${row.correctionReason}` : row.signedBy),
    },
    ...(onCorrect
      ? [
          {
            key: 'correct',
            header: 'Change',
            cell: (row: Greasing) =>
              row.withdrawn ? (
                'withdrawn'
              ) : (
                <Button
                  variant="default"
                  size="compact-sm"
                  onClick={() => onCorrect(row)}
                  aria-label={`Correct the greasing of ${row.tag}`}
                >
                  Correct
                </Button>
              ),
          },
        ]
      : []),
  ]
}
