import { Button, NativeSelect, TextInput } from '@mantine/core'
import type { LineEntry } from './kit-entry.ts'
import { PartPicker } from './part-picker.tsx'
import classes from './kit-form.module.css'

interface KitLineFieldsProps {
  line: LineEntry
  number: number
  faultOf: (field: keyof LineEntry) => string | undefined
  onChange: (part: Partial<LineEntry>) => void
  onRemove: () => void
  onUp: (() => void) | undefined
  onDown: (() => void) | undefined
}

/** One line of a kit: which part, how many, whether it must go on. */
export function KitLineFields({ line, number, faultOf, onChange, onRemove, onUp, onDown }: KitLineFieldsProps) {
  const name = line.partName || `line ${number}`
  return (
    <li className={classes.line} aria-label={`Line ${number}`}>
      <div className={classes.part}>
        <PartPicker label={`Part ${number}`} value={line} onChange={onChange} error={faultOf('partId')} />
      </div>
      <TextInput
        label="Quantity"
        inputMode="decimal"
        autoComplete="off"
        value={line.quantity}
        error={faultOf('quantity')}
        onChange={(event) => onChange({ quantity: event.currentTarget.value })}
      />
      <TextInput
        label="Unit"
        autoComplete="off"
        value={line.unit}
        error={faultOf('unit')}
        onChange={(event) => onChange({ unit: event.currentTarget.value })}
      />
      <NativeSelect
        label="Need"
        value={line.need}
        data={['must', 'may']}
        onChange={(event) => onChange({ need: event.currentTarget.value === 'may' ? 'may' : 'must' })}
      />
      <TextInput
        className={classes.reason}
        label="Why, or when"
        autoComplete="off"
        value={line.reason}
        error={faultOf('reason')}
        onChange={(event) => onChange({ reason: event.currentTarget.value })}
      />
      <div className={classes.move}>
        <Button variant="subtle" size="compact-sm" disabled={!onUp} onClick={onUp} aria-label={`Up: ${name}`}>
          Up
        </Button>
        <Button variant="subtle" size="compact-sm" disabled={!onDown} onClick={onDown} aria-label={`Down: ${name}`}>
          Down
        </Button>
        <Button variant="subtle" size="compact-sm" color="over" onClick={onRemove} aria-label={`Take out: ${name}`}>
          Take out
        </Button>
      </div>
    </li>
  )
}
