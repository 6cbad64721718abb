import { Button, TextInput } from '@mantine/core'
import type { MeterLineAnswer } from '@shaftbook/contract/meter-readings'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { v7 as newId } from 'uuid'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { plantClock, plantInstant } from '../../lib/plant-time.ts'
import { useDraft } from '../../offline/use-draft.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { filledLines, unreadable, type MeterSheet } from './meter-lines.ts'
import { MeterPaste } from './meter-paste.tsx'
import { MeterRow } from './meter-row.tsx'
import { setupQueries } from './setup-queries.ts'
import { useMeterBatch } from './use-meter-batch.ts'
import classes from './meter-sheet.module.css'

const title = 'Meter readings'

/** All hour meters with what they showed last and a field each; a line that is refused stays, with the reason. */
export function MeterSheetForm({ search }: { search: string | undefined }) {
  const { code, me, site } = useSite()
  const draft = useDraft<MeterSheet>(
    { personId: me.id, site: code, subject: 'meter-sheet' },
    { title, address: paths.readMeters(code) },
  )
  const [sheet, setSheet] = useState<MeterSheet>(
    () => draft.found ?? { readAt: '', lines: {}, pasted: '', pastedIds: {} },
  )
  const sheetNow = useRef(sheet)
  const [faults, setFaults] = useState<Readonly<Record<string, string>>>({})
  const change = (part: Partial<MeterSheet>): void => {
    const next = { ...sheetNow.current, ...part }
    sheetNow.current = next
    setSheet(next)
    const empty = next.pasted.trim() === '' && Object.keys(next.lines).length === 0
    if (empty) draft.forget()
    else draft.keep(next)
  }
  const type = (meterId: string, shown: string): void => {
    const { [meterId]: line, ...others } = sheetNow.current.lines
    change({ lines: shown === '' ? others : { ...others, [meterId]: { id: line?.id ?? newId(), shown } } })
    setFaults(({ [meterId]: _mended, ...rest }) => rest)
  }
  const takeAnswers = (answers: readonly MeterLineAnswer[]): void => {
    const { lines } = sheetNow.current
    const meterOf = new Map(Object.entries(lines).map(([meterId, { id }]) => [id, meterId]))
    const taken = new Set(answers.filter(({ outcome }) => outcome === 'taken').map(({ id }) => id))
    change({ lines: Object.fromEntries(Object.entries(lines).filter(([, { id }]) => !taken.has(id))) })
    const refused = answers.flatMap(({ id, sentence }): [string, string][] => {
      const meterId = meterOf.get(id)
      return meterId === undefined || sentence === null ? [] : [[meterId, sentence]]
    })
    setFaults((before) => ({ ...before, ...Object.fromEntries(refused) }))
  }
  const batch = useMeterBatch(takeAnswers)
  const readAt = sheet.readAt === '' ? new Date().toISOString() : plantInstant(sheet.readAt, site.timeZone)
  const filled = filledLines(sheet.lines, readAt ?? '')
  const count = Object.keys(sheet.lines).length
  const send = (): void => {
    batch.reset()
    setFaults(Object.fromEntries(filled.unreadable.map((meterId) => [meterId, unreadable])))
    if (readAt !== undefined && filled.ready.length > 0) batch.mutate(filled.ready)
  }
  return (
    <>
      {draft.found && <p className={classes.back}>What was typed here before is back.</p>}
      <div className={classes.head}>
        <TextInput
          type="datetime-local"
          label="Read at, by the clock of the plant"
          description="Empty: now"
          max={plantClock(new Date(), site.timeZone)}
          value={sheet.readAt}
          error={readAt === undefined ? 'Enter the day and the time.' : undefined}
          onChange={(event) => change({ readAt: event.currentTarget.value })}
        />
        <MeterPaste sheet={sheet} readAt={readAt} onChange={change} />
      </div>
      <Meters search={search} sheet={sheet} faults={faults} readAt={readAt} onType={type} />
      {batch.isError && (
        <p className={classes.failed} role="alert">
          {batch.error.message} What is typed is kept on this device.
        </p>
      )}
      <div className={classes.acts}>
        <Button onClick={send} loading={batch.isPending} disabled={count === 0 || readAt === undefined}>
          {count === 0 ? 'Enter the readings' : count === 1 ? 'Enter 1 reading' : `Enter ${count} readings`}
        </Button>
      </div>
    </>
  )
}

interface MetersProps {
  search: string | undefined
  sheet: MeterSheet
  faults: Readonly<Record<string, string>>
  readAt: string | undefined
  onType: (meterId: string, shown: string) => void
}

function Meters({ search, sheet, faults, readAt, onType }: MetersProps) {
  const { code } = useSite()
  const meters = useInfiniteQuery(setupQueries.meterBoard(code, search))
  const { rows, more } = listed(meters)
  if (meters.isPending) return <LoadingRows what="hour meters" />
  if (meters.isError) return <ErrorState problem={shownProblem(meters.error)} onRetry={() => void meters.refetch()} />
  if (rows.length === 0)
    return (
      <EmptyState
        title={search ? 'No meter matches' : 'No hour meter is entered yet'}
        text={search ? undefined : 'A meter is entered at its machine, in Setup under Areas.'}
      />
    )
  return (
    <>
      <table className={classes.table}>
        <caption className="visually-hidden">Hour meters; Enter leads from field to field</caption>
        <thead>
          <tr>
            <th scope="col">Machine</th>
            <th scope="col">Last reading</th>
            <th scope="col">Shows now, h</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((meter) => (
            <MeterRow
              key={meter.id}
              meter={meter}
              shown={sheet.lines[meter.id]?.shown ?? ''}
              fault={faults[meter.id]}
              readAt={readAt}
              onType={onType}
            />
          ))}
        </tbody>
      </table>
      <TableFoot more={more} shown={rows.length} />
    </>
  )
}
