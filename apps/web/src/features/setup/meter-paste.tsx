import { Button, Textarea } from '@mantine/core'
import type { MeterLineAnswer } from '@shaftbook/contract/meter-readings'
import { useId, useState } from 'react'
import { v7 as newId } from 'uuid'
import { formatCount } from '../../lib/format-count.ts'
import { pastedLines, unreadable, withoutLines, type MeterSheet, type PastedLine } from './meter-lines.ts'
import { useMeterBatch } from './use-meter-batch.ts'
import classes from './meter-sheet.module.css'

interface MeterPasteProps {
  sheet: MeterSheet
  readAt: string | undefined
  onChange: (part: Partial<MeterSheet>) => void
}

/** Takes readings from a spreadsheet: tag of the machine and hours. What is refused stays in the field, with the reason. */
export function MeterPaste(props: MeterPasteProps) {
  const [open, setOpen] = useState(props.sheet.pasted !== '')
  const panelId = useId()
  return (
    <div className={classes.paste} data-open={open || undefined}>
      <Button variant="default" aria-expanded={open} aria-controls={panelId} onClick={() => setOpen(!open)}>
        {open ? 'Close the pasted lines' : 'Paste from a spreadsheet'}
      </Button>
      <section id={panelId} hidden={!open} className={classes.panel} aria-label="Pasted lines">
        {open && <PastePanel {...props} />}
      </section>
    </div>
  )
}

function PastePanel({ sheet, readAt, onChange }: MeterPasteProps) {
  const [answers, setAnswers] = useState<ReadonlyMap<string, MeterLineAnswer>>(new Map())
  const { pasted, pastedIds } = sheet
  const lines = pastedLines(pasted)
  const ready = lines.filter(({ hours, tag }) => hours !== undefined && tag !== '')
  const batch = useMeterBatch((told) => setAnswers((before) => new Map([...before, ...told.map(byId)])))
  const type = (text: string): void => {
    const ids = pastedLines(text).map(({ key }) => [key, pastedIds[key] ?? newId()])
    onChange({ pasted: text, pastedIds: Object.fromEntries(ids) })
  }
  const send = async (): Promise<void> => {
    if (readAt === undefined) return
    const told = await batch.mutateAsync(
      ready.map(({ key, tag, hours = 0 }) => ({
        id: pastedIds[key] ?? newId(),
        machineTag: tag,
        readAt,
        shownHours: hours,
      })),
    )
    const taken = new Set(told.filter(({ outcome }) => outcome === 'taken').map(({ id }) => id))
    const numbers = ready.filter(({ key }) => taken.has(pastedIds[key] ?? '')).map(({ number }) => number)
    const rest = withoutLines(pasted, new Set(numbers))
    const left = new Set(pastedLines(rest).map(({ key }) => key))
    const ids = Object.fromEntries(Object.entries(pastedIds).filter(([key]) => left.has(key)))
    onChange({ pasted: left.size === 0 ? '' : rest, pastedIds: ids })
  }
  return (
    <>
      <Textarea
        label="Tag of the machine, and what its meter shows"
        description="Two columns, one machine a line, with or without headings."
        rows={6}
        spellCheck={false}
        classNames={{ input: classes.text }}
        value={pasted}
        onChange={(event) => type(event.currentTarget.value)}
      />
      {lines.length > 0 && (
        <ul className={classes.lines} aria-label="What was read of it">
          {lines.map((line) => (
            <Line key={line.key} line={line} answer={answers.get(pastedIds[line.key] ?? '')} />
          ))}
        </ul>
      )}
      {batch.isError && (
        <p className={classes.failed} role="alert">
          {batch.error.message} What is pasted is kept on this device.
        </p>
      )}
      <div>
        <Button
          variant="light"
          disabled={ready.length === 0 || readAt === undefined}
          loading={batch.isPending}
          onClick={() => void send().catch(() => undefined)}
        >
          {ready.length === 1 ? 'Enter 1 pasted line' : `Enter ${ready.length} pasted lines`}
        </Button>
      </div>
    </>
  )
}

function byId(answer: MeterLineAnswer): [string, MeterLineAnswer] {
  return [answer.id, answer]
}

function Line({ line, answer }: { line: PastedLine; answer: MeterLineAnswer | undefined }) {
  const { tag, hours, hoursText } = line
  const fault = tag === '' ? 'Say which machine it is.' : hours === undefined ? unreadable : answer?.sentence
  return (
    <li>
      <strong>{tag === '' ? 'no tag' : tag}</strong>{' '}
      {hours === undefined ? hoursText || 'no hours' : `${formatCount(hours)} h`}
      {fault && <output className={classes.fault}>{fault}</output>}
    </li>
  )
}
