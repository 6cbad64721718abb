import { plantDay } from '@shaftbook/contract/time-zone'
import type { Fitment } from '@shaftbook/contract/position-views'
import { correctRemoval, type RemovalListItem } from '@shaftbook/contract/removals'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useMemo } from 'react'
import type { z } from 'zod'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { paths } from '../../paths.ts'
import { useSite, type SiteAccess } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { endWords, modeWords } from './end-words.ts'
import { removalQueries } from './removal-queries.ts'
import classes from './removals.module.css'

type Row = z.output<typeof RemovalListItem>

interface RemovalTableProps {
  positionId: string
  tag: string
  /** The stays at the position, for how each was mounted. */
  fitments: readonly Fitment[]
}

/** Every bearing that left the position: how it was mounted, how long it ran, why it left. */
export function RemovalTable({ positionId, tag, fitments }: RemovalTableProps) {
  const access = useSite()
  const removals = useInfiniteQuery(removalQueries.at(access.code, positionId))
  const { rows, more } = listed(removals)
  const columns = useMemo(() => removalColumns(access, fitments), [access, fitments])
  if (removals.isPending) return <LoadingRows what="removals" rows={3} />
  if (removals.isError)
    return <ErrorState heading="h3" problem={shownProblem(removals.error)} onRetry={() => void removals.refetch()} />
  return (
    <DataTable
      caption={`Bearings that left ${tag}, newest first`}
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      more={more}
      empty={
        <EmptyState
          heading="h3"
          title="No bearing has left this position yet"
          text="When one is taken out, its life and the reason stand here."
        />
      }
    />
  )
}

function removalColumns({ code, site, may }: SiteAccess, fitments: readonly Fitment[]): DataColumn<Row>[] {
  const stayOf = (row: Row) => fitments.find(({ id }) => id === row.fitmentId)
  return [
    {
      key: 'removedAt',
      header: 'Left',
      cell: ({ removedAt }) => <Timestamp at={removedAt} timeZone={site.timeZone} dateOnly relative={false} />,
      phone: 'title',
    },
    { key: 'designation', header: 'Bearing', cell: ({ designation }) => designation, phone: 'aside' },
    {
      key: 'mount',
      header: 'Mount',
      cell: (row) => {
        const stay = stayOf(row)
        const mark = stay?.verdict ? <VerdictMark verdict={stay.verdict} size="s" /> : 'no verdict'
        return stay?.mountRecordId ? <AppLink href={paths.mount(code, stay.mountRecordId)}>{mark}</AppLink> : mark
      },
    },
    {
      key: 'life',
      header: 'Ran',
      unit: 'h',
      align: 'right',
      cell: ({ lifeHours, hoursSource }) => (
        <>
          {lifeHours === null ? 'not known' : formatCount(lifeHours)}
          {hoursSource === 'estimate' && <span className={classes.under}>estimated</span>}
        </>
      ),
    },
    {
      key: 'end',
      header: 'End',
      cell: (row) => (
        <>
          <strong data-end={row.endKind} className={classes.end}>
            {endWords[row.endKind].word}
          </strong>
          {row.endKind === 'failed' && <span className={classes.under}>{modeWords(row)}</span>}
        </>
      ),
    },
    {
      key: 'cause',
      header: 'Cause, and what was found',
      cell: ({ cause, evidence, detection, observer }) => (
        <>
          {cause ?? 'cause not known'}
          {evidence && <span className={classes.under}>{evidence}</span>}
          <span className={classes.under}>
            {detection && `Noticed: ${detection}. `}
            Looked at by {observer}.
          </span>
        </>
      ),
    },
    ...(may(correctRemoval)
      ? [
          {
            key: 'correct',
            header: 'Correct',
            cell: (row: Row) => (
              <AppLink
                href={paths.removalCorrection(code, row.positionId, row.id)}
                aria-label={`Correct the removal of ${row.designation} on ${formatDay(plantDay(new Date(row.removedAt), site.timeZone))}`}
              >
                Correct
              </AppLink>
            ),
          },
        ]
      : []),
  ]
}
