import { NativeSelect } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import classes from './labels.module.css'
import { labelsQueries } from './labels-queries.ts'

interface LabelledPositionsProps {
  search: {
    q?: string | undefined
    area?: string | undefined
    machine?: string | undefined
    position?: string | undefined
  }
  /** Ids of the positions that are ticked; none: all of the choice. */
  picked: ReadonlySet<string>
  onPicked: (picked: ReadonlySet<string>) => void
  /** How many positions the choice has; undefined while unknown, or where there are more than are listed. */
  onCount: (count: number | undefined) => void
}

/** Which positions get a label: by area, machine and tag, all of them or those that are ticked. */
export function LabelledPositions(props: LabelledPositionsProps) {
  const { search } = props
  return search.position ? <OnePosition {...props} id={search.position} /> : <ChosenPositions {...props} />
}

function OnePosition({ id, onCount }: LabelledPositionsProps & { id: string }) {
  const { code } = useSite()
  const place = useQuery(labelsQueries.position(code, id))
  const change = useSearchChange()
  useEffect(() => onCount(place.isError ? 0 : 1), [onCount, place.isError])
  if (place.isPending) return <LoadingRows what="the position" />
  if (place.isError) return <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />
  const { position, machine } = place.data
  return (
    <>
      <p>
        <span className={classes.tag}>{position.tag}</span>, {position.name}, {machine.tag} {machine.name}
      </p>
      <button type="button" className={classes.linkButton} onClick={() => change({ position: undefined })}>
        Choose others too
      </button>
    </>
  )
}

function ChosenPositions({ search, picked, onPicked, onCount }: LabelledPositionsProps) {
  const { code } = useSite()
  const change = useSearchChange()
  const { q, area, machine } = search
  const areas = useQuery(labelsQueries.areas(code))
  const machines = useQuery(labelsQueries.machines(code, area))
  const list = useQuery(labelsQueries.positions(code, { search: q, areaId: area, machineId: machine }))
  const inService = list.data?.items.filter(({ retired }) => !retired)
  const isWhole = list.data?.nextCursor === null
  useEffect(() => onCount(isWhole ? inService?.length : undefined), [onCount, isWhole, inService?.length])
  const narrow = (next: Record<string, string | undefined>): void => {
    onPicked(new Set())
    change(next)
  }
  const tick = (id: string): void => {
    const next = new Set(picked)
    if (!next.delete(id)) next.add(id)
    onPicked(next)
  }
  return (
    <>
      <div className={classes.choose}>
        <NativeSelect
          label="Area"
          value={area ?? ''}
          data={option(
            'All areas',
            areas.data?.items.map(({ id, name }) => ({ value: id, label: name })),
          )}
          onChange={(event) => narrow({ area: event.currentTarget.value || undefined, machine: undefined })}
        />
        <NativeSelect
          label="Machine"
          value={machine ?? ''}
          data={option(
            'All machines',
            machines.data?.items.map(({ id, tag, name }) => ({ value: id, label: `${tag} ${name}` })),
          )}
          onChange={(event) => narrow({ machine: event.currentTarget.value || undefined })}
        />
        <SearchField label="Tag or name" value={q ?? ''} onSearch={(text) => narrow({ q: text || undefined })} />
      </div>
      {list.isPending && <LoadingRows what="the positions" />}
      {list.isError && <ErrorState problem={shownProblem(list.error)} onRetry={() => void list.refetch()} />}
      {inService?.length === 0 && <EmptyState title="No position here" text="Choose another area, machine or tag." />}
      {inService && inService.length > 0 && (
        <>
          <p className={classes.soft}>
            {isWhole ? `${inService.length} positions. ` : 'The first 100 are listed. '}
            All of them get a label, or tick those that need one.
          </p>
          <ul className={classes.list}>
            {inService.map(({ id, tag, name, machineTag, machineName }) => (
              <li key={id}>
                <label className={classes.pick}>
                  <input type="checkbox" checked={picked.has(id)} onChange={() => tick(id)} />
                  <span className={classes.tag}>{tag}</span>
                  <span>
                    {name}, {machineTag} {machineName}
                  </span>
                </label>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}

function option(all: string, choices: readonly { value: string; label: string }[] = []) {
  return [{ value: '', label: all }, ...choices]
}
