import { Button, Textarea } from '@mantine/core'
import classes from './greasing-dialog.module.css'

interface PlanFormFootProps {
  reason: string
  reasonRequired: boolean
  reasonFault: string | undefined
  onReason: (reason: string) => void
  save: { isError: boolean; isPending: boolean; error: Error | null }
  onSubmit: () => void
  onDone: () => void
}

/** How every form of a plan ends: the reason, what the service said, and the acts. */
export function PlanFormFoot({
  reason,
  reasonRequired,
  reasonFault,
  onReason,
  save,
  onSubmit,
  onDone,
}: PlanFormFootProps) {
  return (
    <>
      <Textarea
        label="Reason"
        required={reasonRequired}
        autosize
        minRows={2}
        value={reason}
        error={reasonFault}
        onChange={(event) => onReason(event.currentTarget.value)}
      />
      {save.isError && (
        <p className={classes.failed} role="alert">
          {save.error?.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button variant="default" onClick={onDone}>
          Go back
        </Button>
        <Button onClick={onSubmit} loading={save.isPending}>
          Start this plan
        </Button>
      </div>
    </>
  )
}
