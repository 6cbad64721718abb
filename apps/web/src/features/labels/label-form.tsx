import { NativeSelect } from '@mantine/core'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import { rollSizes, type LabelChoice, type LabelField } from './label-choice.ts'
import classes from './labels.module.css'

interface LabelFormProps {
  choice: LabelChoice
  faults: Partial<Record<LabelField, string>>
  onChange: (change: Partial<LabelChoice>) => void
}

const sheetFields: readonly (readonly [LabelField, string, string])[] = [
  ['columns', 'Columns', ''],
  ['rows', 'Rows', ''],
  ['left', 'Margin left and right', 'mm'],
  ['top', 'Margin above and below', 'mm'],
  ['columnGap', 'Gap between columns', 'mm'],
  ['rowGap', 'Gap between rows', 'mm'],
  ['start', 'Start at label', ''],
]

/** The paper that the labels go on. */
export function LabelForm({ choice, faults, onChange }: LabelFormProps) {
  const field = ([at, label, unit]: readonly [LabelField, string, string]) => (
    <NumberField
      key={at}
      label={label}
      unit={unit}
      text={choice[at]}
      error={faults[at]}
      onText={(text) => onChange({ [at]: text })}
    />
  )
  const size = `${choice.width}x${choice.height}`
  const known = rollSizes.map(([width, height]) => `${width}x${height}`)
  return (
    <div className={classes.form}>
      <ChoiceField
        legend="Paper"
        layout="line"
        choices={[
          { value: 'roll', label: 'Single labels' },
          { value: 'a4', label: 'Sheets of A4' },
        ]}
        value={choice.paper}
        onChange={(paper) => onChange({ paper })}
      />
      {choice.paper === 'roll' ? (
        <>
          <NativeSelect
            label="Size"
            value={known.includes(size) ? size : ''}
            data={[
              ...rollSizes.map(([width, height]) => ({
                value: `${width}x${height}`,
                label: `${width} × ${height} mm`,
              })),
              { value: '', label: 'Another size' },
            ]}
            onChange={(event) => {
              const [width, height] = event.currentTarget.value.split('x')
              if (width && height) onChange({ width, height })
            }}
          />
          <div className={classes.pair}>
            {field(['width', 'Width', 'mm'])}
            {field(['height', 'Height', 'mm'])}
          </div>
        </>
      ) : (
        <div className={classes.pair}>{sheetFields.map(field)}</div>
      )}
    </div>
  )
}
