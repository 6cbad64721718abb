import { Button, Textarea, TextInput } from '@mantine/core'
import { changeRound, createRound, type ProposedStop, type Round } from '@shaftbook/contract/rounds'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useRef, useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { roundQueries } from './round-queries.ts'
import { inWalkingOrder } from './stop-order.ts'
import { StopOrderList, type ChosenStop } from './stop-order-list.tsx'
import { StopPicker } from './stop-picker.tsx'
import classes from './rounds.module.css'

interface RoundFormProps {
  /** The round that is changed; without one a round is made. */
  round?: Round
  backHref: string
  onSaved: (round: Round) => void
}

/** Makes a round of stops in order, or changes one. */
export function RoundForm({ round, backHref, onSaved }: RoundFormProps) {
  const { code } = useSite()
  const client = useQueryClient()
  const areas = useQuery(roundQueries.areas(code))
  const nameField = useRef<HTMLInputElement>(null)
  const [id] = useState(() => round?.id ?? newId())
  const [name, setName] = useState(round?.name ?? '')
  const [note, setNote] = useState(round?.note ?? '')
  const [stops, setStops] = useState<ChosenStop[]>(round?.stops ?? [])
  const [changed, setChanged] = useState(false)
  const [fault, setFault] = useState<{ name?: string; stops?: string }>({})
  const edit =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      setChanged(true)
      set(value)
    }
  const add = (added: readonly ProposedStop[]): void => {
    edit(setStops)([...stops, ...added.map((stop) => ({ ...stop, id: newId() }))])
  }
  const saving = useMutation({
    mutationFn: () => {
      const sent = stops.map((stop) => ({ id: stop.id, positionId: stop.positionId, task: stop.task }))
      const body = { name: name.trim(), note: note.trim(), stops: sent }
      return round
        ? call(changeRound, { params: { site: code, id }, version: round.version, body })
        : call(createRound, { params: { site: code }, body: { id, ...body } })
    },
    onSuccess: async (saved) => {
      setChanged(false)
      await invalidateSite(client, code)
      onSaved(saved)
    },
  })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const found = {
      ...(name.trim() === '' && { name: 'Give the round a name.' }),
      ...(stops.length === 0 && { stops: 'Add at least one stop.' }),
      ...(stops.length > 200 && { stops: 'A round has 200 stops at most: make two of it.' }),
    }
    setFault(found)
    if (found.name) nameField.current?.focus()
    if (Object.keys(found).length === 0) saving.mutate()
  }
  const chosen = new Set(stops.map(keyOf))
  const walked = (areas.data?.items ?? []).map((area) => area.id)
  return (
    <form className={classes.form} onSubmit={submit} noValidate>
      <LeaveGuard when={changed}>The round is not saved yet. What you chose is lost when you leave.</LeaveGuard>
      <TextInput
        ref={nameField}
        label="Name"
        withAsterisk
        value={name}
        error={fault.name}
        onChange={(event) => edit(setName)(event.currentTarget.value)}
      />
      <Textarea
        label="Note"
        description="What whoever walks it has to know: keys, ladders, where it starts"
        autosize
        minRows={2}
        value={note}
        onChange={(event) => edit(setNote)(event.currentTarget.value)}
      />
      <div className={classes.sides}>
        <PagePart title="Stops in order">
          <StopOrderList
            stops={stops}
            onChange={edit(setStops)}
            onWalkingOrder={() => edit(setStops)(inWalkingOrder(stops, walked))}
          />
          {fault.stops && (
            <p className={classes.fault} role="alert">
              {fault.stops}
            </p>
          )}
        </PagePart>
        <PagePart title="Add positions">
          <StopPicker isChosen={(stop) => chosen.has(keyOf(stop))} onAdd={add} />
        </PagePart>
      </div>
      {saving.isError && (
        <p className={classes.fault} role="alert">
          {saving.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={saving.isPending}>
          {round ? 'Change the round' : 'Make the round'}
        </Button>
        <Button component={AppLink} href={backHref} variant="default">
          Go back
        </Button>
      </div>
    </form>
  )
}

function keyOf({ positionId, task }: Pick<ProposedStop, 'positionId' | 'task'>): string {
  return `${positionId} ${task}`
}
