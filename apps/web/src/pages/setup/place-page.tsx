import { useParams } from '@tanstack/react-router'
import { shownProblem } from '../../api/shown-problem.ts'
import { AreaPlace } from '../../features/setup/area-place.tsx'
import { MachinePlace } from '../../features/setup/machine-place.tsx'
import { isPlaceLevel, placeTrail, usePlaces } from '../../features/setup/place-trail.ts'
import { ShaftPlace } from '../../features/setup/shaft-place.tsx'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { NotFoundPage } from '../not-found.tsx'

/** One place of the register with what it holds. */
export function PlacePage() {
  const { code } = useSite()
  const { level = '', id }: { level?: string; id?: string } = useParams({ strict: false })
  const known = isPlaceLevel(level) ? level : null
  const { area, machine, shaft, error } = usePlaces(code, known, id)
  if (known === null) return <NotFoundPage />
  if (error) return <ErrorState heading="h1" problem={shownProblem(error)} />
  if (!area) return <LoadingRows what="the place" />
  const trail = placeTrail(code, { area, machine, shaft }).slice(0, -1)
  if (shaft) return <ShaftPlace shaft={shaft} trail={trail} />
  if (machine) return <MachinePlace machine={machine} trail={trail} />
  return <AreaPlace area={area} trail={trail} />
}
