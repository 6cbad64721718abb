import * as access from './access.ts'
import { allCalculations } from './calculations/all-calculations.ts'
import * as device from './device.ts'
import type { Endpoint } from './endpoint.ts'
import * as flags from './flags.ts'
import * as greaseChanges from './grease-changes.ts'
import * as greasePlans from './grease-plans.ts'
import * as greasing from './greasing.ts'
import * as greasingMail from './greasing-mail.ts'
import * as greasingReports from './greasing-reports.ts'
import * as guns from './guns.ts'
import * as health from './health.ts'
import * as kits from './kits.ts'
import * as life from './life.ts'
import * as makerCharts from './maker-charts.ts'
import * as meterBoard from './meter-board.ts'
import * as meterReadings from './meter-readings.ts'
import * as mountPlans from './mount-plans.ts'
import * as mounts from './mounts.ts'
import * as observations from './observations.ts'
import * as papers from './papers.ts'
import * as photos from './photos.ts'
import * as positionViews from './position-views.ts'
import * as register from './register-tables.ts'
import * as removals from './removals.ts'
import * as roundWalks from './round-walks.ts'
import * as rounds from './rounds.ts'

const features = [
  health,
  access,
  makerCharts,
  kits,
  positionViews,
  device,
  mounts,
  mountPlans,
  removals,
  life,
  greasePlans,
  greaseChanges,
  greasing,
  observations,
  greasingReports,
  greasingMail,
  guns,
  rounds,
  roundWalks,
  meterBoard,
  meterReadings,
  flags,
  papers,
  photos,
]

const registers = [
  register.areas,
  register.machines,
  register.shafts,
  register.meters,
  register.bearingTypes,
  register.bearings,
  register.greases,
  register.parts,
  register.positions,
  register.gauges,
  guns.guns,
]

/** Every endpoint of the API, once. */
export const allEndpoints: readonly Endpoint[] = [
  ...features.flatMap((feature) => Object.values(feature).filter(isEndpoint)),
  ...registers.flatMap(({ list, read, create, change }): Endpoint[] => [list, read, create, change]),
  ...allCalculations.map(({ endpoint }) => endpoint),
]

function isEndpoint(value: unknown): value is Endpoint {
  return typeof value === 'object' && value !== null && 'path' in value && 'access' in value && 'replies' in value
}
