import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import type { ProposedStop } from '@shaftbook/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { useDeferredValue, useState } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { roundQueries } from './round-queries.ts'
import { taskWords } from './round-words.ts'
import classes from './rounds.module.css'

interface StopPickerProps {
  isChosen: (stop: ProposedStop) => boolean
  onAdd: (stops: readonly ProposedStop[]) => void
}

/** Positions with something to do, by area, grease, tag and due state, to be added to the round. */
export function StopPicker({ isChosen, onAdd }: StopPickerProps) {
  const { code } = useSite()
  const areas = useQuery(roundQueries.areas(code))
  const greases = useQuery(roundQueries.greases(code))
  const [areaId, setAreaId] = useState('')
  const [greaseId, setGreaseId] = useState('')
  const [typed, setTyped] = useState('')
  const [dueOnly, setDueOnly] = useState(false)
  const search = useDeferredValue(typed.trim())
  const choice = { areaIds: areaId ? [areaId] : [], greaseIds: greaseId ? [greaseId] : [], search, dueOnly }
  const found = useQuery(roundQueries.proposals(code, choice))
  const left = found.data?.items.filter((stop) => !isChosen(stop)) ?? []
  return (
    <div className={classes.picker}>
      <div className={classes.filters}>
        <NativeSelect
          label="Area"
          value={areaId}
          onChange={(event) => setAreaId(event.currentTarget.value)}
          data={optionsOf('All areas', areas.data?.items)}
        />
        <NativeSelect
          label="Grease"
          value={greaseId}
          onChange={(event) => setGreaseId(event.currentTarget.value)}
          data={optionsOf('All greases', greases.data?.items)}
        />
        <TextInput label="Tag or machine" value={typed} onChange={(event) => setTyped(event.currentTarget.value)} />
        <Checkbox
          label="Only what is due soon or longer"
          checked={dueOnly}
          onChange={(event) => setDueOnly(event.currentTarget.checked)}
        />
      </div>
      {found.isPending && <LoadingRows what="positions" rows={4} />}
      {found.isError && <ErrorState problem={shownProblem(found.error)} onRetry={() => void found.refetch()} />}
      {found.isSuccess && (
        <>
          <Button variant="default" disabled={left.length === 0} onClick={() => onAdd(left)}>
            {left.length === 0 ? 'Nothing more to add here' : `Add all ${left.length} in walking order`}
          </Button>
          {found.data.more && <p className={classes.soft}>Only the first 200: narrow the choice to see others.</p>}
          <ul className={classes.found} aria-label="Positions to add">
            {left.map((stop) => (
              <li key={`${stop.positionId} ${stop.task}`}>
                <span className={classes.stop}>
                  <strong>{stop.tag}</strong>
                  <span className={classes.soft}>
                    {stop.machineName}, {stop.areaName}
                    {stop.task === 'regrease'
                      ? stop.greaseName && ` · ${stop.greaseName}`
                      : ` · ${taskWords[stop.task]}`}
                  </span>
                </span>
                {stop.dueState && <DueMark state={stop.dueState} />}
                <Button variant="default" aria-label={`Add ${stop.tag}`} onClick={() => onAdd([stop])}>
                  Add
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  )
}

function optionsOf(all: string, rows: readonly { id: string; name: string }[] = []) {
  return [{ value: '', label: all }, ...rows.map(({ id, name }) => ({ value: id, label: name }))]
}
