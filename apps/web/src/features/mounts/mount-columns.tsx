import type { MountListItem } from '@shaftbook/contract/mounts'
import type { useUnits } from '../../lib/units.tsx'
import { lengthDigits } from '../../lib/length-units.ts'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { Timestamp } from '../../ui/timestamp.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import classes from './mount-list.module.css'

/** The columns of the list of mounts, lengths in the person's unit. */
export function mountColumns(
  { unit, symbol }: ReturnType<typeof useUnits>,
  timeZone: string,
): DataColumn<MountListItem>[] {
  const digits = (um: number): string => lengthDigits(um, unit)
  return [
    { key: 'verdict', header: 'Verdict', phone: 'aside', width: '156px', cell: (row) => <MountVerdict mount={row} /> },
    { key: 'tag', header: 'Position', phone: 'title', cell: (row) => row.tag },
    {
      key: 'reduction',
      header: 'Taken out',
      unit: symbol,
      align: 'right',
      cell: (row) => (row.reductionUm === null ? 'not read' : digits(row.reductionUm)),
    },
    {
      key: 'band',
      header: 'Band',
      unit: symbol,
      cell: (row) =>
        row.bandMinUm === null || row.bandMaxUm === null
          ? 'none'
          : `${digits(row.bandMinUm)} to ${digits(row.bandMaxUm)}`,
    },
    { key: 'machine', header: 'Machine', cell: (row) => row.machineName },
    { key: 'bearing', header: 'Bearing', cell: (row) => row.designation },
    { key: 'fitter', header: 'Fitted by', cell: (row) => row.fitter },
    {
      key: 'mountedAt',
      header: 'Mounted',
      cell: (row) => <Timestamp at={row.mountedAt} timeZone={timeZone} dateOnly />,
    },
  ]
}

function MountVerdict({ mount }: { mount: MountListItem }) {
  const short = mount.residual === 'too-small' || mount.residual === 'not-proven'
  return (
    <span className={classes.verdict}>
      {mount.verdict ? (
        <VerdictMark verdict={mount.verdict} size="s" />
      ) : (
        <span className={classes.none}>Not judged</span>
      )}
      {!mount.signed && <span className={classes.draft}>Draft</span>}
      {short && mount.residual !== 'no-minimum' && mount.residual && (
        <VerdictMark verdict={mount.residual} about="Residual" size="s" />
      )}
    </span>
  )
}
