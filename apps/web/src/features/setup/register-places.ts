import { paths } from '../../paths.ts'
import type { RegisterName } from './registers.ts'

/** The field that says to what a row belongs, by table. */
export const belongsTo: Partial<Record<RegisterName, string>> = {
  machines: 'areaId',
  shafts: 'machineId',
  meters: 'machineId',
  positions: 'shaftId',
}

/** The page that lists the rows of a table, at the place that they belong to. */
export function registerHref(site: string, name: RegisterName, within: string | undefined): string {
  if (name === 'greases' || name === 'gauges' || name === 'bearing-types') return paths.setupPart(site, name)
  if (name === 'areas' || within === undefined) return paths.setupPart(site, 'places')
  const level = name === 'machines' ? 'area' : name === 'positions' ? 'shaft' : 'machine'
  return paths.place(site, level, within)
}
