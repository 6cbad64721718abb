import { lengthUnitKeys, lengthUnits, isLengthUnit } from '../lib/length-units.ts'
import { useUnits } from '../lib/units.tsx'
import type { MeasureText } from './measure-text.ts'
import { NumberField, type NumberFieldProps } from './number-field.tsx'
import classes from './number-field.module.css'

interface MeasureFieldProps extends Omit<NumberFieldProps, 'text' | 'onText' | 'unit'> {
  value: MeasureText
  onChange: (value: MeasureText) => void
}

/**
 * A clearance or other length as typed, in the person's unit or another chosen for this number. The typed text is kept with
 * the unit it was typed in, so changing the person's unit never changes a number. Read it with `readMeasure`.
 */
export function MeasureField({ value, onChange, ...rest }: MeasureFieldProps) {
  const { unit: ownUnit } = useUnits()
  const unit = value.unit ?? ownUnit
  return (
    <NumberField
      {...rest}
      text={value.text}
      onText={(text) => onChange({ text, unit: text === '' ? null : unit })}
      unit={
        <select
          className={classes.select}
          aria-label={`Unit of ${rest.label}`}
          value={unit}
          disabled={rest.disabled}
          onChange={(event) => {
            if (isLengthUnit(event.currentTarget.value)) onChange({ text: value.text, unit: event.currentTarget.value })
          }}
        >
          {lengthUnitKeys.map((key) => (
            <option key={key} value={key}>
              {lengthUnits[key].symbol}
            </option>
          ))}
        </select>
      }
    />
  )
}
