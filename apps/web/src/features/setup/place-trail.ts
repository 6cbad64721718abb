import { useQuery } from '@tanstack/react-query'
import { paths } from '../../paths.ts'
import { registerQueries } from './registers.ts'
import { setupTrail, type TrailStep } from './setup-trail.ts'

export type PlaceLevel = 'area' | 'machine' | 'shaft'

export function isPlaceLevel(text: string): text is PlaceLevel {
  return text === 'area' || text === 'machine' || text === 'shaft'
}

/** The places around and including a place, from the area in; what is not read yet is absent. */
export function usePlaces(site: string, level: PlaceLevel | null, id: string | undefined) {
  const shaft = useQuery(registerQueries.row(site, 'shafts', level === 'shaft' ? id : undefined))
  const machineId = level === 'machine' ? id : shaft.data?.machineId
  const machine = useQuery(registerQueries.row(site, 'machines', machineId))
  const areaId = level === 'area' ? id : machine.data?.areaId
  const area = useQuery(registerQueries.row(site, 'areas', areaId))
  return {
    area: area.data,
    machine: machine.data,
    shaft: shaft.data,
    error: shaft.error ?? machine.error ?? area.error,
  }
}

/** The trail to a place, or to something entered there. */
export function placeTrail(site: string, places: Omit<ReturnType<typeof usePlaces>, 'error'>): TrailStep[] {
  const { area, machine, shaft } = places
  return setupTrail(
    site,
    { label: 'Areas', href: paths.setupPart(site, 'places') },
    ...(area ? [{ label: area.name, href: paths.place(site, 'area', area.id) }] : []),
    ...(machine ? [{ label: machine.tag, href: paths.place(site, 'machine', machine.id) }] : []),
    ...(shaft ? [{ label: shaft.name, href: paths.place(site, 'shaft', shaft.id) }] : []),
  )
}
