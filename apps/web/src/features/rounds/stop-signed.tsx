import { Button } from '@mantine/core'
import type { RoundStop } from '@shaftbook/contract/rounds'
import { DefinitionList } from '../../ui/definition-list.tsx'
import { oldGreaseWords, outcomeWords } from './round-words.ts'
import type { StopEntry } from './walk-state.ts'
import classes from './walk.module.css'

interface StopSignedProps {
  stop: RoundStop
  entry: StopEntry
  /** Why the service did not take it. */
  refusal: string | undefined
  onMend: () => void
}

/** What was signed at the stop; it changes only where the service refused it. */
export function StopSigned({ stop, entry, refusal, onMend }: StopSignedProps) {
  const { outcome, reason, doseG, oldGrease, relief, temperatureC, note, extraReason } = entry
  const facts = [
    { label: 'Result', value: outcome === null ? '' : outcomeWords[outcome] },
    ...(reason && outcome === 'skipped' ? [{ label: 'Reason', value: reason }] : []),
    ...(doseG === null
      ? []
      : [{ label: 'Dose', value: `${doseG} g${stop.doseG === null ? '' : ` of ${stop.doseG} g planned`}` }]),
    ...(extraReason && doseG !== null ? [{ label: 'Extra dose', value: extraReason }] : []),
    ...(oldGrease ? [{ label: 'Old grease', value: oldGreaseWords[oldGrease] }] : []),
    ...(relief ? [{ label: 'Relief', value: relief === 'closed' ? 'closed again' : 'left open' }] : []),
    ...(temperatureC ? [{ label: 'Temperature', value: `${temperatureC} °C` }] : []),
    ...(note ? [{ label: 'Note', value: note }] : []),
  ]
  return (
    <section className={classes.part} aria-label="Signed">
      {refusal && (
        <div className={classes.stopped} role="alert">
          <p className={classes.stoppedTitle}>Not taken into the book</p>
          <p>{refusal}</p>
          <div className={classes.acts}>
            <Button size="touch" onClick={onMend}>
              Put it right
            </Button>
          </div>
        </div>
      )}
      <DefinitionList items={facts} />
    </section>
  )
}
