import { NativeSelect, TextInput } from '@mantine/core'
import type { Field } from '@shaftbook/contract/calculations/field'
import { isLengthUnit, lengthUnitKeys, lengthUnits } from '../../lib/length-units.ts'
import { useUnits } from '../../lib/units.tsx'
import { MeasureField } from '../../ui/measure-field.tsx'
import type { MeasureText } from '../../ui/measure-text.ts'
import { NumberField } from '../../ui/number-field.tsx'
import { isLength } from './bench-entry.ts'
import classes from './bench.module.css'

interface BenchFieldProps {
  name: string
  field: Field
  value: MeasureText
  fault: string | undefined
  onChange: (value: MeasureText) => void
}

/** One input as its kind asks. */
export function BenchField({ name, field, value, fault, onChange }: BenchFieldProps) {
  const shared = { name, label: field.title, description: field.hint, error: fault }
  const onText = (text: string) => onChange({ text, unit: null })
  const typed = {
    ...shared,
    value: value.text,
    autoComplete: 'off',
    onChange: (event: { currentTarget: { value: string } }) => onText(event.currentTarget.value),
  }
  switch (field.kind) {
    case 'quantity':
      if (isLength(field)) return <MeasureField {...shared} value={value} onChange={onChange} />
      if (field.unit === '') return <TextInput {...typed} inputMode="decimal" />
      return <NumberField {...shared} text={value.text} unit={field.unit} onText={onText} />
    case 'quantities':
      return <ListField {...shared} field={field} value={value} onChange={onChange} />
    case 'choice':
      return <NativeSelect {...typed} data={choicesOf(field, field.choices)} />
    case 'yes-no':
      return <NativeSelect {...typed} data={choicesOf(field, { yes: 'yes', no: 'no' })} />
    case 'day':
      return <TextInput {...typed} type="date" />
    case 'texts':
      return <TextInput {...typed} description={`${field.hint ?? ''}, separated by commas`} />
    default:
      return <TextInput {...typed} spellCheck={false} />
  }
}

function choicesOf(field: Field, choices: Readonly<Record<string, string>>) {
  const none = { value: '', label: field.required ? 'Choose…' : 'not given' }
  return [none, ...Object.entries(choices).map(([value, label]) => ({ value, label }))]
}

interface ListFieldProps {
  name: string
  label: string
  description: string | undefined
  error: string | undefined
  field: Field & { kind: 'quantities' }
  value: MeasureText
  onChange: (value: MeasureText) => void
}

/** Several numbers in one line; a comma is a decimal mark, so spaces stand between them. */
function ListField({ field, value, onChange, label, description, ...rest }: ListFieldProps) {
  const { unit: ownUnit } = useUnits()
  const unit = value.unit ?? ownUnit
  const how = 'Several with spaces between'
  return (
    <TextInput
      {...rest}
      label={label}
      description={description ? `${how}. ${description}` : how}
      value={value.text}
      autoComplete="off"
      onChange={({ currentTarget }) => onChange({ text: currentTarget.value, unit: isLength(field) ? unit : null })}
      rightSectionWidth={64}
      rightSectionPointerEvents="all"
      rightSection={
        isLength(field) ? (
          <select
            className={classes.unit}
            aria-label={`Unit of ${label}`}
            value={unit}
            onChange={({ currentTarget }) => {
              if (isLengthUnit(currentTarget.value)) onChange({ text: value.text, unit: currentTarget.value })
            }}
          >
            {lengthUnitKeys.map((key) => (
              <option key={key} value={key}>
                {lengthUnits[key].symbol}
              </option>
            ))}
          </select>
        ) : (
          <span className={classes.unit}>{field.unit}</span>
        )
      }
    />
  )
}
