import { NativeSelect, Textarea, TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import { ChoiceField, type Choice } from '../../ui/choice-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { useSheet } from './sheet-context.ts'
import { numberFault, numberFields, type NumberKey } from './sheet-numbers.ts'
import type { Sheet, TextField } from './sheet.ts'

interface FieldProps<Key> {
  at: Key
  label: string
  description?: ReactNode
  required?: boolean
}

/** One line of text of the sheet. */
export function SheetText(props: FieldProps<TextField> & { type?: 'text' | 'date' | 'datetime-local'; max?: string }) {
  const { at, label, description, required, type = 'text', max } = props
  const { sheet, change, faultOf } = useSheet()
  return (
    <TextInput
      size="touch"
      type={type}
      label={label}
      description={description}
      withAsterisk={required ?? false}
      value={sheet[at]}
      error={faultOf(at)}
      max={max}
      autoComplete="off"
      enterKeyHint="next"
      onChange={(event) => change({ [at]: event.currentTarget.value })}
    />
  )
}

/** Several lines of text. */
export function SheetNote({ at, label, description, required }: FieldProps<TextField>) {
  const { sheet, change, faultOf } = useSheet()
  return (
    <Textarea
      size="touch"
      label={label}
      description={description}
      withAsterisk={required ?? false}
      value={sheet[at]}
      error={faultOf(at)}
      autosize
      minRows={2}
      maxRows={8}
      onChange={(event) => change({ [at]: event.currentTarget.value })}
    />
  )
}

/** A number with its unit; what is wrong shows as soon as it is typed. */
export function SheetNumber({ at, label, description, required, ask }: FieldProps<NumberKey> & { ask?: ReactNode }) {
  const { sheet, change, faultOf } = useSheet()
  return (
    <NumberField
      size="touch"
      label={label}
      description={description}
      required={required ?? false}
      text={sheet[at]}
      onText={(text) => change({ [at]: text })}
      unit={numberFields[at].unit}
      ask={ask}
      error={faultOf(at) ?? numberFault(sheet, at)}
    />
  )
}

interface SheetSelectProps extends FieldProps<TextField> {
  options: readonly { value: string; label: string }[]
}

/** One of a list that the site keeps. */
export function SheetSelect({ at, label, description, required, options }: SheetSelectProps) {
  const { sheet, change, faultOf } = useSheet()
  return (
    <NativeSelect
      size="touch"
      label={label}
      description={description}
      withAsterisk={required ?? false}
      data={[...options]}
      value={sheet[at]}
      error={faultOf(at)}
      onChange={(event) => change({ [at]: event.currentTarget.value })}
    />
  )
}

/** The fields of a sheet that hold one of a few words. */
type ChoiceKey = {
  [Key in keyof Sheet]: Sheet[Key] extends string ? (string extends Sheet[Key] ? never : Key) : never
}[keyof Sheet]

interface SheetChoiceProps<Key extends ChoiceKey> {
  at: Key
  legend: string
  choices: readonly Choice<Exclude<Sheet[Key], ''>>[]
  description?: ReactNode
  layout?: 'rows' | 'line'
}

/** One of a few choices. */
export function SheetChoice<Key extends ChoiceKey>(props: SheetChoiceProps<Key>) {
  const { at, legend, choices, description, layout = 'rows' } = props
  const { sheet, change, faultOf } = useSheet()
  return (
    <ChoiceField<Exclude<Sheet[Key], ''>>
      legend={legend}
      layout={layout}
      choices={choices}
      value={sheet[at] as Exclude<Sheet[Key], ''> | ''}
      onChange={(chosen) => change({ [at]: chosen })}
      description={description}
      error={faultOf(at)}
    />
  )
}
