import type { PositionListItem } from '@shaftbook/contract/position-views'
import { formatDay } from '../../lib/format-day.ts'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DueMark } from '../../ui/due-mark.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { OpenFlags } from './open-flags.tsx'
import classes from './board.module.css'

/** The columns of the table of positions. */
export function boardColumns(timeZone: string): readonly DataColumn<PositionListItem>[] {
  return [
    {
      key: 'tag',
      header: 'Position',
      cell: ({ tag, retired }) => (retired ? `${tag}, retired` : tag),
      sortable: true,
      phone: 'title',
    },
    {
      key: 'machine',
      header: 'Machine',
      cell: ({ machineName, shaftName, name }) => (
        <>
          {machineName}
          <span className={classes.under}>
            {shaftName.toLowerCase()}, {name.toLowerCase()}
          </span>
        </>
      ),
    },
    { key: 'designation', header: 'Bearing', cell: ({ designation }) => designation },
    {
      key: 'fittedAt',
      header: 'Fitted',
      cell: ({ fittedAt }) =>
        fittedAt ? (
          <Timestamp at={fittedAt} timeZone={timeZone} dateOnly relative={false} />
        ) : (
          <span className={classes.soft}>nothing fitted</span>
        ),
    },
    {
      key: 'verdict',
      header: 'Mount',
      cell: ({ verdict, fittedAt }) =>
        verdict ? (
          <VerdictMark verdict={verdict} />
        ) : (
          <span className={classes.soft}>{fittedAt ? 'no verdict' : '–'}</span>
        ),
    },
    {
      key: 'dueOn',
      header: 'Next greasing',
      sortable: true,
      cell: ({ dueOn, dueState, sealedForLife }) =>
        dueOn && dueState ? (
          <span className={classes.due}>
            <DueMark state={dueState} />
            {dueState !== 'never-greased' && <span className={classes.soft}>{formatDay(dueOn)}</span>}
          </span>
        ) : (
          <span className={classes.soft}>{sealedForLife ? 'sealed for life' : 'no plan'}</span>
        ),
    },
    { key: 'flags', header: 'Flags', cell: ({ openFlags }) => <OpenFlags count={openFlags} />, phone: 'aside' },
  ]
}
