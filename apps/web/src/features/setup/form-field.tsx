import { Checkbox, NativeSelect, PasswordInput, Select, Textarea, TextInput } from '@mantine/core'
import { noMeasure } from '../../ui/measure-text.ts'
import { MeasureField } from '../../ui/measure-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import type { FieldSpec, FormValue } from './form-spec.ts'
import classes from './record-form.module.css'

interface FormFieldProps {
  field: FieldSpec
  value: FormValue
  fault: string | undefined
  onChange: (value: FormValue) => void
}

/** One field as its kind asks. */
export function FormField({ field, value, fault, onChange }: FormFieldProps) {
  const text = typeof value === 'string' ? value : value.text
  const shared = { name: field.name, label: field.label, description: field.help, error: fault }
  const typed = { ...shared, value: text, withAsterisk: isRequired(field), autoComplete: 'off' }
  const onText = (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value)
  switch (field.kind) {
    case 'text':
    case 'email':
      return <TextInput {...typed} type={field.kind} onChange={onText} />
    case 'password':
      return (
        <PasswordInput
          {...typed}
          autoComplete="new-password"
          onChange={onText}
          visibilityToggleButtonProps={{ 'aria-label': 'Show what is typed', tabIndex: 0 }}
        />
      )
    case 'day':
      return <TextInput {...typed} type="date" onChange={onText} />
    case 'blades':
    case 'long-text':
      return <Textarea {...typed} className={classes.wide} autosize minRows={2} onChange={onText} />
    case 'moment':
      return <TextInput {...typed} type="datetime-local" onChange={onText} />
    case 'number':
      if (field.unit === '') return <TextInput {...typed} inputMode="decimal" onChange={onText} />
      return <NumberField {...shared} text={text} unit={field.unit} required={isRequired(field)} onText={onChange} />
    case 'clearance':
      return <MeasureField {...shared} value={typeof value === 'string' ? noMeasure : value} onChange={onChange} />
    case 'yes-no':
      return <NativeSelect {...typed} data={yesNo(field, text)} onChange={onText} />
    case 'since':
      return (
        <Checkbox
          {...shared}
          className={classes.wide}
          label={field.on}
          checked={text !== ''}
          onChange={(event) => onChange(event.currentTarget.checked ? 'now' : '')}
        />
      )
    default:
      return <ChoiceOf field={field} value={text} fault={fault} onChange={onChange} />
  }
}

const searchedFrom = 12

/** A few choices as the browser's own list; many ones can be searched. */
function ChoiceOf({
  field,
  value,
  fault,
  onChange,
}: FormFieldProps & { field: FieldSpec & { kind: 'choice' }; value: string }) {
  const shared = {
    name: field.name,
    label: field.label,
    description: field.help,
    error: fault,
    withAsterisk: isRequired(field),
  }
  if (field.choices.length < searchedFrom) {
    const first = { value: '', label: field.none ?? 'Choose…' }
    const data = field.none === undefined && value !== '' ? [...field.choices] : [first, ...field.choices]
    return (
      <NativeSelect {...shared} value={value} data={data} onChange={(event) => onChange(event.currentTarget.value)} />
    )
  }
  return (
    <Select
      {...shared}
      value={value === '' ? null : value}
      data={[...field.choices]}
      searchable
      clearable={field.none !== undefined}
      placeholder={field.none ?? 'Choose or type'}
      nothingFoundMessage="Nothing matches"
      onChange={(next) => onChange(next ?? '')}
    />
  )
}

function yesNo({ yes, no }: FieldSpec & { kind: 'yes-no' }, value: string) {
  const both = [
    { value: 'yes', label: yes },
    { value: 'no', label: no },
  ]
  return value === '' ? [{ value: '', label: 'Choose…' }, ...both] : both
}

function isRequired(field: FieldSpec): boolean {
  if (field.optional || field.kind === 'since') return false
  if (field.kind === 'choice') return field.none === undefined
  return !(field.kind === 'number' && field.empty !== undefined)
}
