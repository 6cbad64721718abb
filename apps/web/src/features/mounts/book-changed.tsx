import { Button } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { ProblemError } from '../../api/problem-error.ts'
import { useSite } from '../../session/site-access.tsx'
import { chartQuery, placeQuery } from './mount-queries.ts'
import { useSheet } from './sheet-context.ts'
import type { StepKey } from './sheet-steps.ts'
import classes from './sheet.module.css'

/** Where to look again when the book says something else than the sheet was made by. */
const stepFor: Record<string, StepKey> = { 'position-changed': 'strip', 'band-changed': 'drive', 'kit-changed': 'kit' }

interface BookChangedProps {
  error: Error
  onStep: (step: StepKey) => void
  /** The book was read again: what it said before is settled. */
  onLooked: () => void
}

/** Why the sheet was not taken. Where the book has changed meanwhile a person looks again and signs by today's numbers. */
export function BookChanged({ error, onStep, onLooked }: BookChangedProps) {
  const code = error instanceof ProblemError ? error.problem.code : ''
  const step = stepFor[code]
  return (
    <div className={classes.failed} role="alert" tabIndex={-1} data-failed>
      <p>{error.message}</p>
      {step && <LookAgain step={step} onStep={onStep} onLooked={onLooked} />}
    </div>
  )
}

function LookAgain({ step, onStep, onLooked }: Omit<BookChangedProps, 'error'> & { step: StepKey }) {
  const { place, change, scope, sheet } = useSheet()
  const { code } = useSite()
  const client = useQueryClient()
  const [looking, setLooking] = useState(false)
  const look = async (): Promise<void> => {
    setLooking(true)
    const today = await client.fetchQuery({ ...placeQuery(code, place.position.id), staleTime: 0 })
    await client.refetchQueries({ queryKey: chartQuery(code, today.position.makerChartId).queryKey })
    setLooking(false)
    const leavingFitmentId = today.fitment?.id ?? null
    // what was told of another bearing does not count for this one
    if (leavingFitmentId !== sheet.leavingFitmentId) change({ leavingFitmentId, endKind: '', modeClause: null })
    onLooked()
    const isThere = step === 'strip' ? today.fitment !== null : scope.steps.includes(step)
    onStep(isThere ? step : 'seat')
  }
  return (
    <>
      <p>
        Look again, and sign by what the book says today. Or leave it: the sheet stays on this device as it is, until
        somebody has decided.
      </p>
      <Button size="touch" variant="default" loading={looking} onClick={() => void look()}>
        Look again by today's book
      </Button>
    </>
  )
}
