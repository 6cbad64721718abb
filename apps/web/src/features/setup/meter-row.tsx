import { TextInput } from '@mantine/core'
import type { MeterBoardItem } from '@shaftbook/contract/meter-board'
import { memo, type KeyboardEvent } from 'react'
import { formatCount } from '../../lib/format-count.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { askAbout } from './meter-lines.ts'
import classes from './meter-sheet.module.css'

interface MeterRowProps {
  meter: MeterBoardItem
  shown: string
  fault: string | undefined
  readAt: string | undefined
  onType: (meterId: string, shown: string) => void
}

function Row({ meter, shown, fault, readAt, onType }: MeterRowProps) {
  const { code, site } = useSite()
  const { id, machineTag, machineName, name, lastReadAt, lastShownHours } = meter
  const question = shown === '' || readAt === undefined ? undefined : askAbout(meter, shown, new Date(readAt))
  return (
    <tr>
      <th scope="row">
        <AppLink href={paths.meter(code, id)}>{machineTag}</AppLink> {machineName}
        <span className={classes.soft}>{name}</span>
      </th>
      <td>
        {lastReadAt === null || lastShownHours === null ? (
          <span className={classes.soft}>not read yet</span>
        ) : (
          <>
            {formatCount(lastShownHours)} h
            <span className={classes.soft}>
              <Timestamp at={lastReadAt} timeZone={site.timeZone} dateOnly />
            </span>
          </>
        )}
      </td>
      <td>
        <TextInput
          aria-label={`${name} of ${machineTag} shows now, h`}
          value={shown}
          onKeyDown={walkByEnter}
          onChange={(event) => onType(id, event.currentTarget.value)}
          error={fault}
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="next"
        />
        {question && !fault && <output className={classes.ask}>{question}</output>}
      </td>
    </tr>
  )
}

/** Enter leads to the field below, Shift and Enter to the one above. */
function walkByEnter(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return
  event.preventDefault()
  const fields = [...(event.currentTarget.closest('table')?.querySelectorAll('input') ?? [])]
  const next = fields[fields.indexOf(event.currentTarget) + (event.shiftKey ? -1 : 1)]
  next?.focus()
  next?.select()
}

/** A meter with its field; drawn again only when something of its own changes. */
export const MeterRow = memo(
  Row,
  (before, after) =>
    before.meter === after.meter &&
    before.shown === after.shown &&
    before.fault === after.fault &&
    (before.readAt === after.readAt || after.shown === ''),
)
