import type { DestinationKey } from './ui/destinations.tsx'

/** Every address of the dashboard. No other file writes one. Addresses of a site begin with its code. */
export const paths = {
  home: '/',
  signIn: '/sign-in',
  gallery: '/gallery',
  flags: (site: string) => `/${site}/flags`,
  positions: (site: string) => `/${site}/positions`,
  /** The tree of positions with one area open, named by its code. */
  areaPositions: (site: string, areaCode: string) => `/${site}/positions?open=${encodeURIComponent(areaCode)}`,
  machinePositions: (site: string, machineId: string) => `/${site}/positions?machine=${machineId}`,
  position: (site: string, id: string) => `/${site}/positions/${id}`,
  remove: (site: string, positionId: string) => `/${site}/positions/${positionId}/removal`,
  removalCorrection: (site: string, positionId: string, removalId: string) =>
    `/${site}/positions/${positionId}/removals/${removalId}/correction`,
  /** Where the label on a machine leads: a position by its tag or id. */
  at: (site: string, tag: string) => `/${site}/at/${encodeURIComponent(tag)}`,
  scan: (site: string) => `/${site}/scan`,
  /** Labels to print; of one position where it is named. */
  labels: (site: string, positionId?: string) => `/${site}/labels${positionId ? `?position=${positionId}` : ''}`,
  mounts: (site: string) => `/${site}/mounts`,
  mount: (site: string, id: string) => `/${site}/mounts/${id}`,
  /** The mount sheet of a position, for a plan where one is named. */
  remount: (site: string, positionId: string, planId?: string) =>
    `/${site}/positions/${positionId}/remount${planId ? `?plan=${planId}` : ''}`,
  plannedMounts: (site: string) => `/${site}/mounts/planned`,
  plannedMount: (site: string, planId: string) => `/${site}/mounts/planned/${planId}`,
  planMount: (site: string, positionId: string) => `/${site}/positions/${positionId}/plan-mount`,
  /** The mount sheet, with the plan that it is made for. */
  startPlan: (site: string, positionId: string, planId: string) =>
    `/${site}/positions/${positionId}/remount?plan=${planId}`,
  mountDraft: (site: string, id: string) => `/${site}/mounts/${id}/draft`,
  mountCorrection: (site: string, id: string) => `/${site}/mounts/${id}/correction`,
  greasing: (site: string) => `/${site}/greasing`,
  /** Logs what was done at a position; where no task is named, what it is there for. */
  logGreasing: (site: string, positionId: string, task?: string) =>
    `/${site}/greasing?log=${positionId}${task && task !== 'regrease' ? `&do=${task}` : ''}`,
  greasePlans: (site: string, positionId: string) => `/${site}/greasing?plan=${positionId}`,
  rounds: (site: string) => `/${site}/greasing/rounds`,
  round: (site: string, id: string) => `/${site}/greasing/rounds/${id}`,
  newRound: (site: string) => `/${site}/greasing/rounds/new`,
  changeRound: (site: string, id: string) => `/${site}/greasing/rounds/${id}/change`,
  /** The round on the phone, one stop a screen. */
  walkRound: (site: string, id: string) => `/${site}/greasing/rounds/${id}/walk`,
  /** One walk that is in the book. */
  roundWalk: (site: string, walkId: string) => `/${site}/greasing/walks/${walkId}`,
  guns: (site: string) => `/${site}/greasing/guns`,
  greasingAhead: (site: string) => `/${site}/greasing/ahead`,
  /** How windows were met; of one position where it is named. */
  greasingCompliance: (site: string, positionId?: string) =>
    `/${site}/greasing/compliance${positionId ? `?position=${positionId}` : ''}`,
  greasingMail: (site: string) => `/${site}/greasing/calendar-and-mail`,
  stores: (site: string) => `/${site}/stores`,
  parts: (site: string) => `/${site}/stores/parts`,
  part: (site: string, id: string) => `/${site}/stores/parts/${id}`,
  newPart: (site: string) => `/${site}/stores/parts/new`,
  changePart: (site: string, id: string) => `/${site}/stores/parts/${id}/change`,
  kits: (site: string) => `/${site}/stores/kits`,
  kit: (site: string, id: string) => `/${site}/stores/kits/${id}`,
  newKit: (site: string) => `/${site}/stores/kits/new`,
  changeKit: (site: string, id: string) => `/${site}/stores/kits/${id}/change`,
  /** What goes on at a position, in the order of the bins. */
  pickList: (site: string, positionId: string) => `/${site}/stores/positions/${positionId}`,
  life: (site: string) => `/${site}/life`,
  /** What this device keeps of the person, and what it has not sent yet. */
  device: (site: string) => `/${site}/device`,
  /** Every calculation, to try; its numbers stand behind the question mark. */
  bench: (site: string) => `/${site}/bench`,
  calculation: (site: string, name: string) => `/${site}/bench/${name}`,
  setup: (site: string) => `/${site}/setup`,
  setupPart: (site: string, part: SetupPart) => `/${site}/setup/${part}`,
  place: (site: string, level: 'area' | 'machine' | 'shaft', id: string) => `/${site}/setup/places/${level}/${id}`,
  /** What many meters show, entered at once. */
  readMeters: (site: string) => `/${site}/setup/meters/readings`,
  meter: (site: string, id: string) => `/${site}/setup/meters/${id}`,
  admitPerson: (site: string) => `/${site}/setup/people/new`,
  newChart: (site: string) => `/${site}/setup/charts/new`,
  /** Enters the next edition of a chart, from its rows. */
  nextChart: (site: string, chartId: string) => `/${site}/setup/charts/new?from=${chartId}`,
  chart: (site: string, id: string) => `/${site}/setup/charts/${id}`,
  changeChart: (site: string, id: string) => `/${site}/setup/charts/${id}/change`,
  /** Enters a row of a register table; `within` is the place that it belongs to. */
  enterRow: (site: string, table: string, within?: string) =>
    `/${site}/setup/enter/${table}${within ? `?within=${within}` : ''}`,
  changeRow: (site: string, table: string, id: string) => `/${site}/setup/change/${table}/${id}`,
} as const

export type SetupPart =
  'site' | 'people' | 'places' | 'meters' | 'bearing-types' | 'greases' | 'gauges' | 'charts' | 'audit'

/** The same addresses as the router's patterns, below `/$site`. */
export const patterns = {
  flags: 'flags',
  positions: 'positions',
  position: 'positions/$id',
  remove: 'positions/$id/removal',
  removalCorrection: 'positions/$id/removals/$removalId/correction',
  remount: 'positions/$id/remount',
  at: 'at/$position',
  scan: 'scan',
  labels: 'labels',
  mounts: 'mounts',
  mount: 'mounts/$id',
  plannedMounts: 'mounts/planned',
  plannedMount: 'mounts/planned/$planId',
  planMount: 'positions/$id/plan-mount',
  mountDraft: 'mounts/$id/draft',
  mountCorrection: 'mounts/$id/correction',
  greasing: 'greasing',
  rounds: 'greasing/rounds',
  newRound: 'greasing/rounds/new',
  round: 'greasing/rounds/$id',
  changeRound: 'greasing/rounds/$id/change',
  walkRound: 'greasing/rounds/$id/walk',
  roundWalk: 'greasing/walks/$id',
  guns: 'greasing/guns',
  greasingAhead: 'greasing/ahead',
  greasingCompliance: 'greasing/compliance',
  greasingMail: 'greasing/calendar-and-mail',
  stores: 'stores',
  parts: 'stores/parts',
  part: 'stores/parts/$id',
  newPart: 'stores/parts/new',
  changePart: 'stores/parts/$id/change',
  kits: 'stores/kits',
  kit: 'stores/kits/$id',
  newKit: 'stores/kits/new',
  changeKit: 'stores/kits/$id/change',
  pickList: 'stores/positions/$id',
  life: 'life',
  device: 'device',
  bench: 'bench',
  calculation: 'bench/$name',
  setup: 'setup',
  site: 'setup/site',
  people: 'setup/people',
  admitPerson: 'setup/people/new',
  places: 'setup/places',
  place: 'setup/places/$level/$id',
  meters: 'setup/meters',
  readMeters: 'setup/meters/readings',
  meter: 'setup/meters/$id',
  bearingTypes: 'setup/bearing-types',
  greases: 'setup/greases',
  gauges: 'setup/gauges',
  charts: 'setup/charts',
  newChart: 'setup/charts/new',
  chart: 'setup/charts/$id',
  changeChart: 'setup/charts/$id/change',
  enterRow: 'setup/enter/$table',
  changeRow: 'setup/change/$table/$id',
  audit: 'setup/audit',
} as const

/** Where the frame's seven destinations lead at a site. */
export function destinationHrefs(site: string): Record<DestinationKey, string> {
  return {
    flags: paths.flags(site),
    positions: paths.positions(site),
    mounts: paths.mounts(site),
    greasing: paths.greasing(site),
    stores: paths.stores(site),
    life: paths.life(site),
    setup: paths.setup(site),
  }
}
