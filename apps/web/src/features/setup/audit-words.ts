/** The tables that the trail of changes names, in words. */
export const auditTables: Readonly<Record<string, string>> = {
  area: 'Area',
  machine: 'Machine',
  shaft: 'Shaft',
  position: 'Position',
  meter: 'Hour meter',
  meter_reading: 'Meter reading',
  bearing_type: 'Bearing type',
  bearing: 'Bearing',
  fitment: 'Fitment',
  mount_plan: 'Planned mount',
  mount_record: 'Mount record',
  mount_decision: 'Decision on a mount',
  fitted_part: 'Part taken',
  removal: 'Removal',
  photo: 'Photo',
  grease: 'Grease',
  grease_plan: 'Grease plan',
  plan_review: 'Review of a grease plan',
  greasing_window: 'Window of a greasing',
  grease_change: 'Grease change-over',
  observation: 'Observation',
  greasing: 'Greasing',
  gun: 'Grease gun',
  round: 'Round',
  round_stop: 'Stop of a round',
  round_walk: 'Walk of a round',
  walk_stop: 'Stop on a walk',
  maker_chart: "Maker's chart",
  part: 'Part',
  kit: 'Kit',
  gauge: 'Gauge',
  flag: 'Flag',
  site: 'Site',
  membership: 'Person at the site',
}

export const auditActions = { insert: 'entered', update: 'changed', delete: 'taken out' } as const

type Fields = Readonly<Record<string, unknown>> | null

/** Fields that say nothing to a reader: keys, counters and clocks of the row itself. */
const silent = new Set(['id', 'site_id', 'version', 'created_at', 'updated_at', 'fitted'])

export interface FieldChange {
  readonly field: string
  readonly before: string | null
  readonly after: string | null
}

/** What an entry of the trail changed, field by field; of a new or deleted row, what it said. */
export function fieldChanges(before: Fields, after: Fields): FieldChange[] {
  const names = [...new Set([...Object.keys(before ?? {}), ...Object.keys(after ?? {})])]
  return names.flatMap((name) => {
    const [was, is] = [words(before?.[name]), words(after?.[name])]
    return silent.has(name) || was === is ? [] : [{ field: name.replaceAll('_', ' '), before: was, after: is }]
  })
}

const moment = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:/
const recordId = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

function words(value: unknown): string | null {
  if (value === null || value === undefined || value === '') return null
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value !== 'string') return JSON.stringify(value)
  if (moment.test(value)) return `${new Date(value).toISOString().slice(0, 16).replace('T', ' ')} UTC`
  return recordId.test(value) ? `record …${value.slice(-6)}` : value
}
