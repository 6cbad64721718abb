import { useParams, useSearch } from '@tanstack/react-router'
import { useQuery } from '@tanstack/react-query'
import { shownProblem } from '../../api/shown-problem.ts'
import { PartHead } from '../../features/setup/part-head.tsx'
import { placeTrail, usePlaces, type PlaceLevel } from '../../features/setup/place-trail.ts'
import { belongsTo, registerHref } from '../../features/setup/register-places.ts'
import { isRegisterName, registerQueries, registers, type RegisterName } from '../../features/setup/registers.ts'
import { RowForm } from '../../features/setup/row-form.tsx'
import { setupTrail } from '../../features/setup/setup-trail.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { NotFoundPage } from '../not-found.tsx'
import type { WithinSearch } from './setup-search.ts'

/** Enters a row of the register. */
export function EnterRowPage() {
  const { table = '' }: { table?: string } = useParams({ strict: false })
  const { within }: WithinSearch = useSearch({ strict: false })
  if (!isRegisterName(table)) return <NotFoundPage />
  const field = belongsTo[table]
  if (field && !within) return <NotFoundPage />
  return <EnterRow key={`${table} ${within}`} name={table} within={field && within ? { [field]: within } : {}} />
}

function EnterRow({ name, within }: { name: RegisterName; within: Readonly<Record<string, string>> }) {
  const { code, may } = useSite()
  const [place] = Object.values(within)
  const trail = useRowTrail(name, place)
  const { noun, create } = registers[name]
  if (!may(create)) return <NotYours noun={noun} />
  return (
    <>
      <PartHead title={`Enter ${withArticle(noun)}`} trail={trail} />
      <RowForm name={name} within={within} backHref={registerHref(code, name, place)} />
    </>
  )
}

/** Changes a row of the register. */
export function ChangeRowPage() {
  const { table = '', id }: { table?: string; id?: string } = useParams({ strict: false })
  return isRegisterName(table) ? <ChangeRow key={id} name={table} id={id} /> : <NotFoundPage />
}

function ChangeRow({ name, id }: { name: RegisterName; id: string | undefined }) {
  const { code, may } = useSite()
  const row = useQuery(registerQueries.row(code, name, id))
  const field = belongsTo[name]
  const place = field && (row.data as Record<string, unknown> | undefined)?.[field]
  const within = typeof place === 'string' ? place : undefined
  const trail = useRowTrail(name, within)
  const { noun, change } = registers[name]
  if (!may(change)) return <NotYours noun={noun} />
  if (row.isPending) return <LoadingRows what={`the ${noun}`} />
  if (row.isError)
    return <ErrorState heading="h1" problem={shownProblem(row.error)} onRetry={() => void row.refetch()} />
  return (
    <>
      <PartHead title={`Change ${withArticle(noun)}`} trail={trail} />
      <RowForm key={row.data.version} name={name} row={row.data} backHref={registerHref(code, name, within)} />
    </>
  )
}

function useRowTrail(name: RegisterName, within: string | undefined) {
  const { code } = useSite()
  const places = usePlaces(code, levelAround[name] ?? null, within)
  if (name === 'greases') return setupTrail(code, { label: 'Greases', href: registerHref(code, name, undefined) })
  if (name === 'gauges') return setupTrail(code, { label: 'Gauges', href: registerHref(code, name, undefined) })
  if (name === 'bearing-types')
    return setupTrail(code, { label: 'Bearing types', href: registerHref(code, name, undefined) })
  return placeTrail(code, places)
}

const levelAround: Partial<Record<RegisterName, PlaceLevel>> = {
  machines: 'area',
  shafts: 'machine',
  meters: 'machine',
  positions: 'shaft',
}

function NotYours({ noun }: { noun: string }) {
  return (
    <EmptyState
      heading="h1"
      title={`Your role does not enter or change ${withArticle(noun)}`}
      text="An engineer or a manager of the site does."
    />
  )
}

function withArticle(noun: string): string {
  return `${/^[aeiou]/.test(noun) || noun.startsWith('hour') ? 'an' : 'a'} ${noun}`
}
