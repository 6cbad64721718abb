import { TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import classes from './number-field.module.css'

export interface NumberFieldProps {
  label: string
  /** What was typed, as typed: the field never rewrites it. */
  text: string
  onText: (text: string) => void
  /** Symbol at the right end of the field: "g", "h", "°C". */
  unit: ReactNode
  description?: ReactNode
  /** What is wrong and what to do next. */
  error?: ReactNode
  /** Something to ask about without refusing it. */
  ask?: ReactNode
  /** `touch` is the big form, for gloves. */
  size?: 'sm' | 'touch'
  name?: string
  required?: boolean
  disabled?: boolean
  placeholder?: string
  onBlur?: () => void
}

/** A number with its unit; takes comma or point. Read it with `parseNumber`. */
export function NumberField(props: NumberFieldProps) {
  const { label, text, onText, unit, size = 'sm', ask, ...rest } = props
  return (
    <div className={classes.field} data-size={size}>
      <TextInput
        {...rest}
        label={
          <>
            {label}
            {typeof unit === 'string' && <span className="visually-hidden">, {unit}</span>}
          </>
        }
        size={size}
        value={text}
        onChange={(event) => onText(event.currentTarget.value)}
        inputMode="decimal"
        autoComplete="off"
        enterKeyHint="next"
        rightSection={<span className={classes.unit}>{unit}</span>}
        rightSectionWidth={unitWidth(unit, size)}
        rightSectionPointerEvents={typeof unit === 'string' ? 'none' : 'all'}
        classNames={{ input: classes.input }}
      />
      <output className={classes.ask}>{ask}</output>
    </div>
  )
}

/** Room for the unit: a symbol stands close to its number, a choice of units needs its width. */
function unitWidth(unit: ReactNode, size: 'sm' | 'touch'): number {
  if (typeof unit !== 'string') return size === 'touch' ? 84 : 64
  return (size === 'touch' ? 28 : 24) + 9 * unit.length
}
