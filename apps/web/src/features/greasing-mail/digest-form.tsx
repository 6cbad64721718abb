import { Button, Checkbox, NativeSelect } from '@mantine/core'
import { changeMailDigest, type MailDigest } from '@shaftbook/contract/greasing-mail'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { useNotice } from '../../ui/notice.tsx'
import {
  digestSentence,
  entryOf,
  hourWords,
  sameEntry,
  toggled,
  weekdayWords,
  type DigestEntry,
} from './digest-entry.ts'
import classes from './mail.module.css'
import type { NamedPlace } from './mail-queries.ts'

const hours = Array.from({ length: 24 }, (_, hour) => ({ value: String(hour), label: hourWords(hour) }))

interface DigestFormProps {
  digest: MailDigest
  areas: readonly NamedPlace[]
}

/** Days, hour and areas of the mail of what is due. */
export function DigestForm({ digest, areas }: DigestFormProps) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [entry, setEntry] = useState(() => entryOf(digest))
  const change = (part: Partial<DigestEntry>): void => setEntry((old) => ({ ...old, ...part }))
  const save = useMutation({
    mutationFn: () => call(changeMailDigest, { params: { site: code }, body: entry }),
    onSuccess: async (saved) => {
      setEntry(entryOf(saved))
      notice.done(saved.weekdays.length === 0 ? 'No mail comes any more.' : 'Mails come as you chose.')
      await invalidateSite(client, code)
    },
  })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    save.mutate()
  }
  return (
    <form onSubmit={submit} className={classes.form}>
      <DigestState digest={digest} />
      <fieldset className={classes.group}>
        <legend>Days</legend>
        <div className={classes.days}>
          {weekdayWords.map((word, index) => (
            <Checkbox
              key={word}
              label={word}
              checked={entry.weekdays.includes(index + 1)}
              onChange={() => change({ weekdays: toggled(entry.weekdays, index + 1) })}
            />
          ))}
        </div>
      </fieldset>
      <NativeSelect
        className={classes.hour}
        label="From"
        description={`By the clock of the plant, ${site.timeZone}`}
        value={String(entry.hour)}
        onChange={(event) => change({ hour: Number(event.currentTarget.value) })}
        data={hours}
      />
      <fieldset className={classes.group}>
        <legend>Areas</legend>
        <p className={classes.note}>None chosen: the whole site.</p>
        <div className={classes.areas}>
          {areas.map(({ id, name }) => (
            <Checkbox
              key={id}
              label={name}
              checked={entry.areaIds.includes(id)}
              onChange={() => change({ areaIds: toggled(entry.areaIds, id) })}
            />
          ))}
        </div>
      </fieldset>
      <Checkbox
        label="A mail also when nothing is due"
        checked={entry.alsoWhenNothing}
        onChange={(event) => change({ alsoWhenNothing: event.currentTarget.checked })}
      />
      {save.isError && <ErrorState heading="h3" problem={shownProblem(save.error)} />}
      <div>
        <Button type="submit" loading={save.isPending}>
          Save
        </Button>
      </div>
      <LeaveGuard when={!sameEntry(entry, entryOf(digest)) && !save.isPending}>
        What you chose here is not saved yet and would be lost.
      </LeaveGuard>
    </form>
  )
}

function DigestState({ digest }: { digest: MailDigest }) {
  return (
    <>
      <p>{digestSentence(digest)}</p>
      {!digest.mailReady && (
        <p className={classes.missing}>
          <strong>No mail server is set.</strong> What you choose is kept; mails begin once who runs the book has set
          SHAFTBOOK_SMTP and SHAFTBOOK_MAIL_FROM.
        </p>
      )}
      {digest.problem && <p className={classes.missing}>{digest.problem}</p>}
    </>
  )
}
