import { Button } from '@mantine/core'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { correctRemoval, createRemoval, type Removal } from '@shaftbook/contract/removals'
import { useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useEffect, useRef, useState, type FormEvent, type ReactNode } from 'react'
import { v7 } from 'uuid'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useDraft } from '../../offline/use-draft.ts'
import { useOutboxSend, waitingSentence } from '../../offline/use-outbox-send.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { AppLink } from '../../ui/link.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
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
  stay: { id: string; designation: string; serial: string | null; fittedAt: string }
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
  const navigate = useNavigate()
  const client = useQueryClient()
  const notice = useNotice()
  const { position, meter } = place
  const key = {
    personId: me.id,
    site: code,
    subject: wrong ? `removal-correction/${wrong.id}` : `removal/${position.id}`,
  }
  const about = wrong
    ? {
        title: `Correction of the removal at ${position.tag}`,
        address: paths.removalCorrection(code, position.id, wrong.id),
      }
    : { title: `Removal at ${position.tag}`, address: paths.remove(code, position.id) }
  const draft = useDraft<RemovalEntry>(key, about)
  const form = useRef<HTMLFormElement>(null)
  const [entry, setEntry] = useState<RemovalEntry>(() => {
    const start = { id: v7(), leavingFitmentId: stay.id, personName: me.name, now: new Date(), timeZone: site.timeZone }
    return draft.found ?? (wrong ? entryOf(wrong, start) : newEntry(start))
  })
  const [changed, setChanged] = useState(draft.found !== null)
  const [faults, setFaults] = useState<Faults>({})
  const [faultRound, setFaultRound] = useState(0)
  const [confirming, setConfirming] = useState(false)
  const purpose = wrong ? 'correction' : 'new'
  const hasMeter = meter !== null

  const showFaults = (found: Faults) => {
    setFaults(found)
    setFaultRound((round) => round + 1)
  }
  const sending = useOutboxSend<typeof createRemoval | typeof correctRemoval>({
    first: () => sendPhotos?.(entry.id) ?? Promise.resolve(),
    onTaken: async (taken) => {
      const end = entry.endKind === '' ? '' : endWords[entry.endKind].word.toLowerCase()
      const done = wrong
        ? `The removal at ${position.tag} is corrected: ${end}.`
        : `${stay.designation} is out of ${position.tag}: ${end}. Nothing is fitted there now.`
      notice.done(taken.state === 'sent' ? done : waitingSentence(about.title, taken.why))
      await navigate({ to: paths.position(code, position.id), ignoreBlocker: true })
    },
    onRefused: (error) => {
      setConfirming(false)
      if (!(error instanceof ProblemError)) return
      showFaults(faultsOf(error))
      // what is fitted there now is read, so that the person can say which bearing is meant
      if (error.problem.code === 'position-changed') void invalidateSite(client, code)
    },
  })
  const sign = (): void => {
    const shared = {
      kind: 'removal',
      site: code,
      positionId: position.id,
      subjectText: about.title,
      address: about.address,
      typed: { subject: key.subject, ...about, value: entry },
    } as const
    sending.mutate(
      wrong
        ? {
            ...shared,
            endpoint: correctRemoval,
            input: { params: { site: code, id: wrong.id }, body: correctionBody(entry) },
          }
        : {
            ...shared,
            endpoint: createRemoval,
            input: {
              params: { site: code },
              body: newRemovalBody(entry, position.id, { hasMeter, timeZone: site.timeZone }),
            },
          },
    )
  }
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
    const next = { ...entry, ...part }
    setEntry(next)
    draft.keep(next)
    setChanged(true)
    setFaults((old) => Object.fromEntries(Object.entries(old).filter(([field]) => !(field in part))))
  }
  const shared = { entry, change, faults }
  const isOfAnother = entry.leavingFitmentId !== undefined && entry.leavingFitmentId !== stay.id
  return (
    <form ref={form} className={classes.form} onSubmit={ask} noValidate>
      <LeaveGuard when={changed && !sending.isPending && !sending.isSuccess}>
        {draft.keeping === 'not-kept'
          ? 'What you typed here is not signed yet. It is lost when you leave.'
          : 'What you typed here is not signed yet. It is kept on this device, under "This device".'}
      </LeaveGuard>
      {draft.found && <p>What was typed here before is back.</p>}
      {isOfAnother && (
        <AnotherStay stay={stay} tag={position.tag} onThisOne={() => change({ leavingFitmentId: stay.id })} />
      )}
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
        onConfirm={sign}
        onCancel={() => setConfirming(false)}
      >
        <Consequences entry={entry} correction={wrong !== null} />
      </Confirm>
    </form>
  )
}

interface AnotherStayProps {
  stay: RemovalFormProps['stay']
  tag: string
  onThisOne: () => void
}

/** What was typed was begun for a bearing that is not the one that is fitted now: a person says which is meant. */
function AnotherStay({ stay, tag, onThisOne }: AnotherStayProps) {
  const { site } = useSite()
  const serial = stay.serial === null ? '' : ` no. ${stay.serial}`
  return (
    <div className={classes.another} role="alert">
      <p>
        This was begun for another bearing than the one at {tag} now: {stay.designation}
        {serial}, fitted <Timestamp at={stay.fittedAt} timeZone={site.timeZone} />.
      </p>
      <Button variant="default" size="touch" onClick={onThisOne}>
        The one fitted now leaves
      </Button>
    </div>
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
