import { Button } from '@mantine/core'
import { useMediaQuery } from '@mantine/hooks'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useEffect, useRef, useState, type KeyboardEvent } from 'react'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { verdictMeaning } from '../../ui/verdict-mark.tsx'
import { BenchSection, NewBearingSection } from './sections-bearing.tsx'
import { MakeSafeSection, OldBearingSection, SeatSection } from './sections-before.tsx'
import { CloseSection, GreaseSection, PartsSection } from './sections-closing.tsx'
import { DriveUpSection, MountedSection } from './sections-mounting.tsx'
import { SheetGauge } from './sheet-gauge.tsx'
import { mountQuery } from './mount-queries.ts'
import { SheetProvider, type SheetPurpose } from './sheet-context.ts'
import { draftFaults, signFaults, type Faults, type Suggestions } from './sheet-faults.ts'
import { faultsByField, suggestionsByField } from './sheet-body.ts'
import { sendSheet } from './sheet-sending.ts'
import { SignConfirm } from './sign-confirm.tsx'
import { useSheetState, type SheetAbout } from './use-sheet-state.ts'
import classes from './sheet.module.css'

/** The mount sheet: everything that is written down when a bearing is fitted, in the order of the work. */
export function MountSheet(about: SheetAbout) {
  const { code, site } = useSite()
  const hold = useSheetState(about)
  const { sheet, scope, judged, place } = hold
  const wide = useMediaQuery('(min-width: 1200px)', undefined, { getInitialValueInEffect: false })
  const form = useRef<HTMLDivElement>(null)
  const [confirming, setConfirming] = useState(false)
  const client = useQueryClient()
  const navigate = useNavigate()
  const notice = useNotice()
  const hasMeter = place.meter !== null
  const input = {
    sheet,
    scope,
    readings: judged.readings,
    needsReason: judged.needsReason,
    hasMeter,
    timeZone: site.timeZone,
  }
  const [faultRound, setFaultRound] = useState(0)

  const send = useMutation({
    mutationFn: (sign: boolean) => sendSheet(code, about, input, sign),
    onSuccess: async (record, sign) => {
      hold.forget()
      notice.done(doneSentence(record, sign, about.purpose))
      client.setQueryData(mountQuery(code, record.id).queryKey, record)
      await navigate({ to: paths.mount(code, record.id), ignoreBlocker: true })
      await invalidateSite(client, code)
    },
    onError: (error) => {
      setConfirming(false)
      if (!(error instanceof ProblemError)) return
      const { fields = [] } = error.problem
      show(faultsByField(fields, judged.readings), suggestionsByField(fields, judged.readings))
    },
  })
  const show = (faults: Faults, suggestions?: Suggestions): boolean => {
    hold.setFaults(faults, suggestions)
    setFaultRound((round) => round + 1)
    return Object.keys(faults).length > 0
  }
  const checked = () => ({
    sheet,
    scope,
    limits: hold.limits,
    judged,
    hasMeter,
    timeZone: site.timeZone,
    now: new Date(),
  })
  const keep = (): void => {
    send.reset()
    if (!show(draftFaults(checked()))) send.mutate(false)
  }
  const askToSign = (): void => {
    send.reset()
    if (!show(signFaults(checked()))) setConfirming(true)
  }
  useEffect(() => {
    if (faultRound > 0) focusFirstFault(form.current)
  }, [faultRound])

  return (
    <SheetProvider value={hold}>
      <LeaveGuard when={hold.dirty && !send.isPending && !send.isSuccess}>
        What you typed stays on this device until this tab is closed: come back to this page to go on.
      </LeaveGuard>
      {hold.restored && (
        <div className={classes.restored}>
          <span>What was typed here before is back.</span>
          <Button variant="default" onClick={hold.startAfresh}>
            Start afresh
          </Button>
        </div>
      )}
      <div className={classes.layout}>
        {/* Enter goes to the next field: a record is signed by its button only. */}
        {/* oxlint-disable-next-line jsx-a11y/no-static-element-interactions */}
        <div ref={form} className={classes.form} onKeyDown={enterGoesOn}>
          <MakeSafeSection />
          <OldBearingSection />
          <SeatSection />
          <NewBearingSection />
          <BenchSection />
          <DriveUpSection />
          <MountedSection />
          <PartsSection />
          <GreaseSection />
          <CloseSection />
          {send.isError && (
            <p className={classes.failed} role="alert" tabIndex={-1} data-failed>
              {send.error.message}
            </p>
          )}
          <div className={classes.acts}>
            <Button size="touch" onClick={askToSign}>
              {about.purpose === 'correction' ? 'Sign the correction' : 'Sign'}
            </Button>
            {about.purpose !== 'correction' && (
              <Button size="touch" variant="default" onClick={keep} loading={send.isPending && !send.variables}>
                Keep as draft
              </Button>
            )}
          </div>
        </div>
        {wide && scope.taper && sheet.method !== 'by-feel' && (
          <aside className={classes.aside} aria-label="Clearance gauge">
            <SheetGauge size="phone" />
          </aside>
        )}
      </div>
      <SignConfirm
        opened={confirming}
        busy={send.isPending}
        onConfirm={() => send.mutate(true)}
        onCancel={() => setConfirming(false)}
      />
    </SheetProvider>
  )
}

function doneSentence(record: MountRecord, sign: boolean, purpose: SheetPurpose): string {
  if (!sign) return `Kept as a draft for ${record.tag}.`
  const { verdict } = record.judgement
  const outcome = verdict ? `: ${verdictMeaning(verdict)}` : ''
  return `The ${purpose === 'correction' ? 'correction' : 'mount'} at ${record.tag} is signed${outcome}.`
}

/** To the first field that is wrong, or else to the sentence that says what is. */
function focusFirstFault(form: HTMLElement | null): void {
  const fields = ['input', 'textarea', 'select'].map((name) => `${name}[aria-invalid="true"]`)
  const first = form?.querySelector<HTMLElement>([...fields, '[data-invalid] input'].join(','))
  const target = first ?? form?.querySelector<HTMLElement>('[data-failed]')
  target?.focus()
}

function enterGoesOn(event: KeyboardEvent<HTMLElement>): void {
  const { target } = event
  if (event.key !== 'Enter' || !(target instanceof HTMLInputElement) || target.type === 'radio') return
  event.preventDefault()
  const fields = [...event.currentTarget.querySelectorAll<HTMLElement>('input:not([type="radio"]), select, textarea')]
  fields[fields.indexOf(target) + 1]?.focus()
}
