import { Button, NativeSelect, TextInput } from '@mantine/core'
import { createCalendarFeed } from '@shaftbook/contract/greasing-mail'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { useNotice } from '../../ui/notice.tsx'
import classes from './mail.module.css'
import type { NamedPlace } from './mail-queries.ts'

/** Makes a calendar link and shows its address, this once. */
export function MakeLink({ areas, rounds }: { areas: readonly NamedPlace[]; rounds: readonly NamedPlace[] }) {
  const { code } = useSite()
  const client = useQueryClient()
  const [about, setAbout] = useState('')
  const [id, setId] = useState(() => newId())
  const make = useMutation({
    mutationFn: () => call(createCalendarFeed, { params: { site: code }, body: { id, ...subjectOf(about) } }),
    onSuccess: async () => {
      setId(newId())
      await invalidateSite(client, code)
    },
  })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    make.mutate()
  }
  return (
    <div className={classes.form}>
      <form onSubmit={submit} className={classes.line}>
        <NativeSelect
          label="What is due in"
          value={about}
          onChange={(event) => {
            setAbout(event.currentTarget.value)
            setId(newId())
          }}
          data={[
            { value: '', label: 'The whole site' },
            { group: 'Areas', items: choices('area', areas) },
            ...(rounds.length > 0 ? [{ group: 'Rounds', items: choices('round', rounds) }] : []),
          ]}
        />
        <Button type="submit" loading={make.isPending}>
          Make a link
        </Button>
      </form>
      {make.isError && <ErrorState heading="h3" problem={shownProblem(make.error)} />}
      {make.data && <MadeLink address={make.data.address} />}
    </div>
  )
}

function choices(kind: 'area' | 'round', places: readonly NamedPlace[]) {
  return places.map(({ id, name }) => ({ value: `${kind} ${id}`, label: name }))
}

/** What the link is about, from the choice "area <id>", "round <id>" or nothing. */
function subjectOf(about: string): { areaId?: string; roundId?: string } {
  const [kind, id] = about.split(' ')
  if (id === undefined) return {}
  return kind === 'area' ? { areaId: id } : { roundId: id }
}

function MadeLink({ address }: { address: string }) {
  const notice = useNotice()
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(address)
      notice.done('The address is copied.')
    } catch {
      notice.failed('This browser does not let the book copy: mark the address and copy it by hand.')
    }
  }
  return (
    <section className={classes.made} aria-live="polite" aria-label="The new link">
      <div className={classes.line}>
        <TextInput
          label="Address of the calendar"
          description="Subscribe to it in your calendar program. It is shown this once: the book keeps no copy."
          value={address}
          readOnly
          onFocus={(event) => event.currentTarget.select()}
          className={classes.wide}
        />
        <Button variant="default" onClick={() => void copy()}>
          Copy
        </Button>
      </div>
      <p className={classes.note}>
        Whoever has the address reads what is due. End the link when it got into other hands.
      </p>
    </section>
  )
}
