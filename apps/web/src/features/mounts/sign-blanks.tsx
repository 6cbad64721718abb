import { NativeSelect } from '@mantine/core'
import { BlankReason } from '@shaftbook/contract/mount-details'
import { blankWords } from './blank-words.ts'
import { openBlanks, type Ask } from './sheet-asks.ts'
import { useSheet } from './sheet-context.ts'
import { StepPart } from './step-part.tsx'
import type { StepKey } from './sheet-steps.ts'
import classes from './sheet.module.css'

const choices = BlankReason.options.map((value) => ({ value, label: blankWords[value] }))

/** Measured numbers that were left out: each is entered, or stays blank with a reason. */
export function SignBlanks({ onStep }: { onStep: (step: StepKey) => void }) {
  const { asks, sheet, change } = useSheet()
  const blank = asks.filter(({ measured, told }) => measured === true && told(sheet) !== 'all')
  if (blank.length === 0) return null
  const open = openBlanks(asks, sheet)
  const put = (of: readonly Ask[], reason: BlankReason): void =>
    change({ blanks: { ...sheet.blanks, ...Object.fromEntries(of.map(({ key }) => [key, reason])) } })
  return (
    <StepPart
      title="Left blank"
      hint="A number is entered, or stays blank with a reason. Nothing is filled in for you."
    >
      {blank.map((ask) => (
        <BlankRow key={ask.key} ask={ask} onStep={onStep} onReason={(reason) => put([ask], reason)} />
      ))}
      {open.length > 1 && (
        <NativeSelect
          size="touch"
          label={`The same for all ${open.length} that have no reason`}
          value=""
          data={[{ value: '', label: 'Choose a reason' }, ...choices]}
          onChange={(event) => {
            const { data } = BlankReason.safeParse(event.currentTarget.value)
            if (data) put(open, data)
          }}
        />
      )}
    </StepPart>
  )
}

interface BlankRowProps {
  ask: Ask
  onStep: (step: StepKey) => void
  onReason: (reason: BlankReason) => void
}

function BlankRow({ ask, onStep, onReason }: BlankRowProps) {
  const { sheet, faultOf } = useSheet()
  const { key, label, step, told } = ask
  return (
    <div className={classes.blank}>
      <NativeSelect
        size="touch"
        label={told(sheet) === 'part' ? `${label}: not all of it` : label}
        value={sheet.blanks[key] ?? ''}
        data={[{ value: '', label: 'Why is it blank?' }, ...choices]}
        error={faultOf(`blanks.${key}`)}
        onChange={(event) => {
          const { data } = BlankReason.safeParse(event.currentTarget.value)
          if (data) onReason(data)
        }}
      />
      <button type="button" className={classes.linkButton} onClick={() => onStep(step)}>
        Enter it<span className="visually-hidden">: {label}</span>
      </button>
    </div>
  )
}
