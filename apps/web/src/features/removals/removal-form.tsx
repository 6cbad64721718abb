import { Button } from '@mantine/core'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { correctRemoval, createRemoval, type Removal } from '@shaftbook/contract/removals'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useEffect, useRef, useState, type FormEvent, type ReactNode } from 'react'
import { v7 } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { AppLink } from '../../ui/link.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { endWords } from './end-words.ts'
import {
  correctionBody,
  entryFaults,
  entryOf,
  newEntry,
  newRemovalBody,
  type EntryField,
  type Faults,
  type RemovalEntry,
} from './removal-entry.ts'
import { EndSection, FoundSection, ReasonSection, WhenSection } from './removal-sections.tsx'
import classes from './removals.module.css'

interface RemovalFormProps {
  place: PositionOverview
  /** The bearing that leaves, or left. */
  stay: { designation: string; serial: string | null; fittedAt: string }
  /** The signed removal to correct; null for a new one. */
  wrong: Removal | null
  /** Where photos of it are taken. */
  photos?: ReactNode
  /** Puts the photos on their way before the removal that they belong to. */
  sendPhotos?: (removalId: string) => Promise<void>
}

/** Logs that a bearing left its position and why, or corrects what a signed removal says. */
export function RemovalForm({ place, stay, wrong, photos, sendPhotos }: RemovalFormProps) {
  const { code, me, site } = useSite()
  const client = useQueryClient()
  const navigate = useNavigate()
  const notice = useNotice()
  const form = useRef<HTMLFormElement>(null)
  const [entry, setEntry] = useState<RemovalEntry>(() => {
    const start = { id: v7(), personName: me.name, now: new Date(), timeZone: site.timeZone }
    return wrong ? entryOf(wrong, start) : newEntry(start)
  })
  const [changed, setChanged] = useState(false)
  const [faults, setFaults] = useState<Faults>({})
  const [faultRound, setFaultRound] = useState(0)
  const [confirming, setConfirming] = useState(false)
  const { position, meter } = place
  const purpose = wrong ? 'correction' : 'new'
  const hasMeter = meter !== null

  const showFaults = (found: Faults) => {
    setFaults(found)
    setFaultRound((round) => round + 1)
  }
  const sending = useMutation({
    mutationFn: async (): Promise<Removal> => {
      await sendPhotos?.(entry.id)
      return await (wrong
        ? call(correctRemoval, { params: { site: code, id: wrong.id }, body: correctionBody(entry) })
        : call(createRemoval, {
            params: { site: code },
            body: newRemovalBody(entry, position.id, { hasMeter, timeZone: site.timeZone }),
          }))
    },
    onSuccess: async ({ endKind }) => {
      await invalidateSite(client, code)
      const end = endWords[endKind].word.toLowerCase()
      notice.done(
        wrong
          ? `The removal at ${position.tag} is corrected: ${end}.`
          : `${stay.designation} is out of ${position.tag}: ${end}. Nothing is fitted there now.`,
      )
      await navigate({ to: paths.position(code, position.id), ignoreBlocker: true })
    },
    onError: (error) => {
      setConfirming(false)
      if (error instanceof ProblemError) showFaults(faultsOf(error))
    },
  })
  const ask = (event: FormEvent) => {
    event.preventDefault()
    sending.reset()
    const about = { purpose, hasMeter, timeZone: site.timeZone, now: new Date(), fittedAt: stay.fittedAt } as const
    const found = entryFaults(entry, about)
    showFaults(found)
    if (Object.keys(found).length === 0) setConfirming(true)
  }
  useEffect(() => {
    if (faultRound > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"], [data-invalid] input')?.focus()
  }, [faultRound])
  const change = (part: Partial<RemovalEntry>) => {
    setEntry((old) => ({ ...old, ...part }))
    setChanged(true)
    setFaults((old) => Object.fromEntries(Object.entries(old).filter(([field]) => !(field in part))))
  }
  const shared = { entry, change, faults }
  return (
    <form ref={form} className={classes.form} onSubmit={ask} noValidate>
      <LeaveGuard when={changed && !sending.isPending && !sending.isSuccess}>
        What you typed here is not signed yet. It is lost when you leave.
      </LeaveGuard>
      {wrong ? <ReasonSection {...shared} /> : <WhenSection {...shared} meter={meter} />}
      <EndSection {...shared} />
      <FoundSection {...shared} photos={photos} />
      {sending.isError && (
        <p className={classes.failed} role="alert">
          {sending.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" size="touch">
          {wrong ? 'Sign the correction' : 'Sign the removal'}
        </Button>
        <Button component={AppLink} href={paths.position(code, position.id)} size="touch" variant="default">
          Go back
        </Button>
      </div>
      <Confirm
        opened={confirming}
        title={wrong ? 'Sign this correction?' : `Sign that ${stay.designation} left ${position.tag}?`}
        confirmLabel="Sign"
        busy={sending.isPending}
        onConfirm={() => sending.mutate()}
        onCancel={() => setConfirming(false)}
      >
        <Consequences entry={entry} correction={wrong !== null} />
      </Confirm>
    </form>
  )
}

function Consequences({ entry, correction }: { entry: RemovalEntry; correction: boolean }) {
  const end = entry.endKind === '' ? '' : endWords[entry.endKind].word.toLowerCase()
  return (
    <ul className={classes.consequences}>
      <li>
        It counts as: <strong>{end}</strong>.{' '}
        {entry.endKind === 'failed'
          ? 'In the analysis of lives this is a failure.'
          : 'In the analysis of lives it is no failure: the life only ends being watched.'}
      </li>
      <li>
        {correction
          ? 'The removal before stays in the book; this one counts from now on. Time and hours stay as they were.'
          : 'Its stay ends, and the position stands empty until a mount is logged.'}
      </li>
      <li>A signed removal never changes: what is wrong in it is corrected by a further record.</li>
    </ul>
  )
}

/** What the service refused, by field. */
function faultsOf(error: ProblemError): Faults {
  return Object.fromEntries(
    (error.problem.fields ?? []).map(({ path, message }) => [path as EntryField, message] as const),
  )
}
