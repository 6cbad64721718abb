import { Button } from '@mantine/core'
import { useMediaQuery } from '@mantine/hooks'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { Problem } from '@shaftbook/contract/problem'
import { useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useEffect, useRef, useState } from 'react'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { waitingSentence, type Taken } from '../../offline/use-outbox-send.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { verdictMeaning } from '../../ui/verdict-mark.tsx'
import { BookChanged } from './book-changed.tsx'
import { enterGoesOn, focusFirstFault } from './field-focus.ts'
import { mountQuery } from './mount-queries.ts'
import { faultsByField, suggestionsByField, type Suggestions } from './service-faults.ts'
import { SheetProvider } from './sheet-context.ts'
import { draftFaults, signFaults, type Faults } from './sheet-faults.ts'
import { SheetFoot } from './sheet-foot.tsx'
import { SheetGauge } from './sheet-gauge.tsx'
import { SlotsProvider, type SheetSlots } from './sheet-slots.ts'
import { SheetStepList, StepRuler } from './sheet-step-list.tsx'
import { stepTitle, type SheetPurpose, type StepKey } from './sheet-steps.ts'
import { SignConfirm } from './sign-confirm.tsx'
import { SheetStep } from './steps/sheet-step.tsx'
import { firstStepOf, stepOfKey } from './step-state.ts'
import { useSheetSending } from './use-sheet-sending.ts'
import { useSheetState, type SheetAbout } from './use-sheet-state.ts'
import { useStep } from './use-step.ts'
import classes from './sheet.module.css'

interface MountSheetProps extends SheetAbout {
  slots?: SheetSlots
  /** What the service said of the sheet when it was sent before. */
  refusedBefore?: Problem | null
}

/** The mount sheet: one step of the work a screen, kept on the device as it is typed. */
export function MountSheet({ slots = {}, refusedBefore = null, ...about }: MountSheetProps) {
  const { code, site } = useSite()
  const hold = useSheetState(about)
  const { sheet, scope, judged, place, asks } = hold
  const wide = useMediaQuery('(min-width: 1200px)', undefined, { getInitialValueInEffect: false })
  const { step, go } = useStep(scope)
  const form = useRef<HTMLDivElement>(null)
  const [confirming, setConfirming] = useState(false)
  const client = useQueryClient()
  const navigate = useNavigate()
  const notice = useNotice()
  const hasMeter = place.meter !== null
  const [shown, setShown] = useState<FaultRound>({ round: 0, step: null })

  const photosOf = about.record === null ? sheet.recordId : (about.record.correctsId ?? about.record.id)
  const { queuePhotos } = slots
  const sending = useSheetSending(about, hold, {
    first: queuePhotos && (() => queuePhotos(photosOf)),
    onTaken: async (taken, signed) => {
      hold.handedOn()
      notice.done(takenSentence(taken, signed, about.purpose, place.position.tag))
      const { to, record } = whereNext(taken, code, about.positionId)
      if (record) client.setQueryData(mountQuery(code, record.id).queryKey, record)
      await navigate({ to, ignoreBlocker: true })
    },
    onRefused: (error) => {
      setConfirming(false)
      if (!(error instanceof ProblemError)) return
      const { fields = [] } = error.problem
      show(faultsByField(fields, judged.readings), suggestionsByField(fields, judged.readings))
    },
  })
  /** Shows what is wrong, at the first step that has something; true where anything is. */
  const show = (faults: Faults, suggestions?: Suggestions): boolean => {
    hold.setFaults(faults, suggestions)
    const keys = Object.keys(faults)
    const steps = keys.map((key) => stepOfKey(key, scope))
    const first = firstStepOf(steps, scope) ?? step
    setShown(({ round }) => ({ round: round + 1, step: first }))
    if (first !== step) go(first)
    return keys.length > 0
  }
  const checked = () => ({
    sheet,
    asks,
    scope,
    judged,
    hasMeter,
    kitAnswers: hold.kitAnswers,
    limits: hold.limits,
    timeZone: site.timeZone,
    now: new Date(),
  })
  const body = () => ({
    sheet,
    asks,
    scope,
    hasMeter,
    readings: judged.readings,
    needsReason: judged.needsReason,
    timeZone: site.timeZone,
    limits: hold.limits,
    kit: place.kit,
    shaftDiameterMm: hold.record?.shaftDiameterMm ?? null,
  })
  const handOver = (): void => {
    settle()
    if (!show(draftFaults(checked()))) sending.send(body(), false)
  }
  const settle = (): void => {
    sending.reset()
    setBefore(null)
  }
  const askToSign = (): void => {
    settle()
    if (!show(signFaults(checked()))) setConfirming(true)
  }
  const [firstShown] = useState(step)
  useFocusOnStep(form, step, shown)
  const [before, setBefore] = useState(refusedBefore)
  const refusal = sending.error ?? (before && !sending.signing ? new ProblemError(before) : null)

  return (
    <SheetProvider value={hold}>
      <SlotsProvider value={slots}>
        <LeaveGuard when={hold.dirty && hold.keeping === 'not-kept' && !sending.signing && !sending.done}>
          This device does not keep what you typed: it is gone when you leave this page.
        </LeaveGuard>
        <div className={classes.layout} data-guided data-step={step}>
          {wide ? (
            <nav className={classes.steps} aria-label="Steps">
              <SheetStepList scope={scope} states={hold.states} step={step} onStep={go} />
            </nav>
          ) : (
            <nav aria-label="Steps">
              <StepRuler scope={scope} states={hold.states} step={step} onStep={go} />
            </nav>
          )}
          {/* Enter goes to the next field: a record is signed by its button only. */}
          {/* oxlint-disable-next-line jsx-a11y/no-static-element-interactions */}
          <div ref={form} className={classes.form} onKeyDown={enterGoesOn}>
            {hold.restored && step === firstShown && (
              <div className={classes.restored}>
                <span>What was typed here before is back.</span>
                <Button variant="default" onClick={hold.startAfresh}>
                  Start afresh
                </Button>
              </div>
            )}
            <h2 className={classes.heading} tabIndex={-1} data-heading>
              {stepTitle(step, scope)}
            </h2>
            {refusal && <BookChanged error={refusal} onStep={go} onLooked={settle} />}
            <SheetStep step={step} onStep={go} />
            {step === 'sign' && about.purpose !== 'correction' && (
              <Button size="touch" variant="default" onClick={handOver} loading={sending.handing}>
                Hand over unsigned
              </Button>
            )}
            <SheetFoot step={step} onStep={go} tried={shown.round > 0} busy={sending.signing} onSign={askToSign} />
          </div>
          {wide && step !== 'drive' && scope.taper && scope.clearance && (
            <aside className={classes.aside} aria-label="Clearance gauge">
              <SheetGauge past={scope.steps.indexOf(step) > scope.steps.indexOf('drive')} />
            </aside>
          )}
        </div>
        <SignConfirm
          opened={confirming}
          busy={sending.signing}
          onConfirm={() => sending.send(body(), true)}
          onCancel={() => setConfirming(false)}
        />
      </SlotsProvider>
    </SheetProvider>
  )
}

/** How often faults were shown, and at which step the first of them stands. */
interface FaultRound {
  round: number
  step: StepKey | null
}

/** The heading of a new step has the focus, or the first field of it that is wrong. */
function useFocusOnStep(form: React.RefObject<HTMLDivElement | null>, step: StepKey, shown: FaultRound): void {
  const seen = useRef({ step, round: shown.round })
  useEffect(() => {
    const { step: lastStep, round: lastRound } = seen.current
    const due = shown.round !== lastRound && shown.step === step
    if (due) {
      seen.current.round = shown.round
      focusFirstFault(form.current)
    } else if (step !== lastStep) {
      form.current?.querySelector<HTMLElement>('[data-heading]')?.focus({ preventScroll: true })
    }
    seen.current.step = step
  }, [form, step, shown])
}

function whereNext(taken: Taken<MountRecord>, site: string, positionId: string) {
  if (taken.state === 'sent') return { to: paths.mount(site, taken.reply.id), record: taken.reply }
  return { to: paths.position(site, positionId), record: null }
}

function takenSentence(taken: Taken<MountRecord>, signed: boolean, purpose: SheetPurpose, tag: string): string {
  const what = `The ${purpose === 'correction' ? 'correction' : 'mount'} at ${tag}`
  if (taken.state === 'waiting') return waitingSentence(signed ? `${what}, signed,` : what, taken.why)
  if (!signed) return `Handed over: anybody at ${tag} can go on with it.`
  const { verdict, residual } = taken.reply.judgement
  const left = residual && residual !== 'no-minimum' ? residualClauses[residual] : ''
  return `${what} is signed${verdict ? `: ${verdictMeaning(verdict)}${left}` : ''}.`
}

const residualClauses = {
  enough: '',
  'too-small': ', and too little clearance is left',
  'not-proven': ', and it is not proven that enough clearance is left',
} as const
