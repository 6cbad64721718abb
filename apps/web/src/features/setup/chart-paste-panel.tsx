import { Button, Checkbox, NativeSelect, Textarea } from '@mantine/core'
import { clearanceClasses } from '@shaftbook/standards/clearance-classes'
import { useId, useState } from 'react'
import { isLengthUnit, lengthUnitKeys, lengthUnits } from '../../lib/length-units.ts'
import { ChartPastePreview } from './chart-paste-preview.tsx'
import classes from './chart-paste.module.css'
import { readPastedChart, type PasteChoices, type PastedChart, type PastedRow } from './chart-paste.ts'
import { separators, type Separator } from './paste-cells.ts'

const asSeems: PasteChoices = {
  separator: null,
  roles: {},
  clearanceUnit: null,
  driveUpUnit: 'mm',
  taper: '1:12',
  clearanceClass: null,
}

/** Takes rows from a pasted table: shown line by line first, put among the rows of the chart when the person says so. */
export function ChartPaste({ onTake }: { onTake: (rows: readonly PastedRow[], keepOthers: boolean) => void }) {
  const [open, setOpen] = useState(false)
  const panelId = useId()
  return (
    <div>
      <Button variant="default" aria-expanded={open} aria-controls={panelId} onClick={() => setOpen(!open)}>
        {open ? 'Close the pasted table' : 'Paste a table'}
      </Button>
      <section id={panelId} className={classes.panel} hidden={!open} aria-label="Pasted table">
        {open && (
          <PastePanel
            onTake={(rows, keepOthers) => {
              onTake(rows, keepOthers)
              setOpen(false)
            }}
          />
        )}
      </section>
    </div>
  )
}

function PastePanel({ onTake }: { onTake: (rows: readonly PastedRow[], keepOthers: boolean) => void }) {
  const [text, setText] = useState('')
  const [choices, setChoices] = useState(asSeems)
  const [leaveOut, setLeaveOut] = useState(false)
  const [keepOthers, setKeepOthers] = useState(false)
  const read = readPastedChart(text, choices)
  const rows = read.lines.flatMap(({ row, faults }) => (row && faults.length === 0 ? [row] : []))
  const faulty = read.lines.length - rows.length
  const ready = rows.length > 0 && (faulty === 0 || leaveOut)
  return (
    <>
      <Textarea
        label="The table"
        description="Copied from a spreadsheet or a document, with or without its headings. Nothing is kept until you save the chart."
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        rows={6}
        spellCheck={false}
        classNames={{ input: classes.text }}
      />
      {text.trim() !== '' && (
        <>
          <Choices read={read} choices={choices} onChange={setChoices} />
          <ChartPastePreview
            read={read}
            onRole={(at, role) => setChoices({ ...choices, roles: { ...choices.roles, [at]: role } })}
          />
          <div className={classes.acts}>
            {faulty > 0 && rows.length > 0 && (
              <Checkbox
                label={faulty === 1 ? 'Leave out the line with a fault' : `Leave out the ${faulty} lines with faults`}
                checked={leaveOut}
                onChange={(event) => setLeaveOut(event.currentTarget.checked)}
              />
            )}
            <Checkbox
              label="Keep the rows that stand in the chart already"
              checked={keepOthers}
              onChange={(event) => setKeepOthers(event.currentTarget.checked)}
            />
            <Button variant="light" disabled={!ready} onClick={() => onTake(rows, keepOthers)}>
              {rows.length === 1 ? 'Take this row' : `Take these ${rows.length} rows`}
            </Button>
          </div>
        </>
      )}
    </>
  )
}

interface ChoicesProps {
  read: PastedChart
  choices: PasteChoices
  onChange: (choices: PasteChoices) => void
}

/** What the table does not say itself. */
function Choices({ read, choices, onChange }: ChoicesProps) {
  const set = (change: Partial<PasteChoices>) => onChange({ ...choices, ...change })
  return (
    <div className={classes.choices}>
      <NativeSelect
        label="Columns are parted by"
        value={read.separator}
        data={Object.entries(separators).map(([value, label]) => ({ value, label }))}
        onChange={(event) => set({ separator: event.currentTarget.value as Separator, roles: {} })}
      />
      <NativeSelect
        label="Clearances are in"
        value={read.clearanceUnit}
        data={lengthUnitKeys.map((value) => ({ value, label: lengthUnits[value].name }))}
        onChange={(event) => {
          if (isLengthUnit(event.currentTarget.value)) set({ clearanceUnit: event.currentTarget.value })
        }}
      />
      <NativeSelect
        label="Drive-up is in"
        value={choices.driveUpUnit}
        data={(['mm', 'in'] as const).map((value) => ({ value, label: lengthUnits[value].name }))}
        onChange={(event) => set({ driveUpUnit: event.currentTarget.value === 'in' ? 'in' : 'mm' })}
      />
      <NativeSelect
        label="Taper"
        value={choices.taper}
        data={['1:12', '1:30']}
        onChange={(event) => set({ taper: event.currentTarget.value === '1:30' ? '1:30' : '1:12' })}
      />
      <NativeSelect
        label="Clearance class"
        value={choices.clearanceClass ?? ''}
        data={[{ value: '', label: 'all classes' }, ...clearanceClasses]}
        onChange={(event) => {
          const chosen = event.currentTarget.value
          set({ clearanceClass: clearanceClasses.find((name) => name === chosen) ?? null })
        }}
      />
    </div>
  )
}
