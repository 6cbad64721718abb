import { checkLocating } from '@shaftbook/bearing/locating'
import type { FlagFacts, FlagKind } from '@shaftbook/contract/flags'
import { v7 as uuidv7 } from 'uuid'
import type { PlaceToday } from '@shaftbook/contract/plan-duty'
import { umFromNm } from '../db/units.ts'
import {
  baseUrgency,
  positionFlags,
  type DueFacts,
  type FitmentFacts,
  type MountFacts,
  type WantedFlag,
} from './flag-rules.ts'
import { changeFlag, openChange, type ChangeFacts } from './change-flag.ts'
import { observedFlags, type ObservedFacts } from './observed-flags.ts'
import { observedOf } from './observed-of.ts'
import { planFlags, type PlanFacts } from './plan-flags.ts'
import { placeToday, plansInForce } from './plans-in-force.ts'
import type { Bookkeeping } from './refresh.ts'
import type { SiteDay } from './site.ts'

/** Where a flag hangs in the register. */
interface Place {
  readonly positionId: string | null
  readonly shaftId: string | null
  readonly fitmentId: string | null
  readonly areaId: string
}

interface PlacedFlag {
  readonly wanted: WantedFlag
  readonly place: Place
}

interface PositionRow {
  position_id: string
  area_id: string
  retired: boolean
  fitment: Omit<FitmentFacts, 'mount'> | null
  mount: MountRow | null
  dues: DueFacts[]
  plans: PlanFacts[]
  place: PlaceToday
  observed: ObservedFacts[]
  change: ChangeFacts | null
}

type InUm = 'reductionUm' | 'mountedMeanUm' | 'bandMinUm' | 'bandMaxUm' | 'residualMinUm' | 'expandedUncertaintyUm'
type MountRow = Omit<MountFacts, InUm> & MountNm

interface MountNm {
  reductionNm: number | null
  mountedMeanNm: number | null
  bandMinNm: number | null
  bandMaxNm: number | null
  residualMinNm: number | null
  expandedUncertaintyNm: number | null
}

/** Raises, updates and clears the flags of these positions. */
export async function refreshPositionFlags(
  bookkeeping: Bookkeeping,
  site: SiteDay,
  positionIds: readonly string[],
  how: string,
): Promise<void> {
  const rows = await bookkeeping.sql<PositionRow>(positionFactsSql, [bookkeeping.scope.siteId, positionIds])
  const wanted = rows.flatMap((row) => {
    if (row.retired) return []
    const fitment = row.fitment && { ...row.fitment, mount: row.mount && inMicrometres(row.mount) }
    const flags = [
      ...positionFlags(fitment, row.dues),
      ...(row.fitment ? observedFlags(row.fitment.fitmentId, row.observed) : []),
      ...(row.change ? [changeFlag(row.change)] : []),
      ...planFlags(row.plans, row.place, site.today, site.now),
    ]
    return flags.map((flag) => ({ wanted: flag, place: placeOf(row, flag) }))
  })
  await saveFlags(bookkeeping, { column: 'position_id', ids: positionIds }, wanted, site.now, how)
}

/** Raises and clears the locating flags of these shafts (R-LOC). A shaft with an engineer's reason is left in peace. */
export async function refreshShaftFlags(
  bookkeeping: Bookkeeping,
  site: SiteDay,
  shaftIds: readonly string[],
  how: string,
): Promise<void> {
  const rows = await bookkeeping.sql<ShaftRow>(shaftFactsSql, [bookkeeping.scope.siteId, shaftIds])
  const wanted = rows.flatMap((row): PlacedFlag[] => {
    const check = checkLocating(row.positions)
    if (!check.needsOverride || row.override_reason !== null) return []
    const kind: FlagKind = check.verdict === 'none' ? 'no-locating' : 'several-locating'
    const facts: FlagFacts = { locatingTags: check.locatingTags }
    return [
      {
        wanted: { kind, subjectId: row.shaft_id, since: site.now.toISOString(), urgency: baseUrgency[kind], facts },
        place: { positionId: null, shaftId: row.shaft_id, fitmentId: null, areaId: row.area_id },
      },
    ]
  })
  await saveFlags(bookkeeping, { column: 'shaft_id', ids: shaftIds }, wanted, site.now, how)
}

interface ShaftRow {
  shaft_id: string
  area_id: string
  override_reason: string | null
  positions: { tag: string; locating: boolean }[]
}

interface OpenFlag {
  id: string
  kind: FlagKind
  subject_id: string
  urgency: number
  facts: FlagFacts
  area_id: string
}

/** Makes the open flags of these places equal to the wanted ones, in four statements at most. */
async function saveFlags(
  bookkeeping: Bookkeeping,
  places: { column: 'position_id' | 'shaft_id'; ids: readonly string[] },
  wanted: readonly PlacedFlag[],
  now: Date,
  how: string,
): Promise<void> {
  const { siteId, personId } = bookkeeping.scope
  const open = await bookkeeping.sql<OpenFlag>(
    `select id, kind, subject_id, urgency, facts, area_id from flag
     where site_id = $1::uuid and ${places.column} = any($2::uuid[]) and cleared_at is null`,
    [siteId, places.ids],
  )
  const openByKey = new Map(open.map((flag) => [key(flag.kind, flag.subject_id), flag]))
  const wantedKeys = new Set(wanted.map(({ wanted: flag }) => key(flag.kind, flag.subjectId)))

  const settled = open.filter((flag) => !wantedKeys.has(key(flag.kind, flag.subject_id)))
  if (settled.length > 0) {
    await bookkeeping.sql(
      `update flag set cleared_at = $3::timestamptz, cleared_by = $4::uuid, cleared_how = $5
       where site_id = $1::uuid and id = any($2::uuid[])`,
      [siteId, settled.map((flag) => flag.id), now, personId, how],
    )
  }
  const moved = wanted.flatMap(({ wanted: flag, place }) => {
    const known = openByKey.get(key(flag.kind, flag.subjectId))
    return known && differs(known, flag, place)
      ? [{ id: known.id, urgency: flag.urgency, facts: flag.facts, area_id: place.areaId }]
      : []
  })
  if (moved.length > 0) {
    await bookkeeping.sql(
      `update flag set urgency = r.urgency, facts = r.facts, area_id = r.area_id
       from jsonb_to_recordset($2::jsonb) as r(id uuid, urgency float8, facts jsonb, area_id uuid)
       where flag.site_id = $1::uuid and flag.id = r.id`,
      [siteId, JSON.stringify(moved)],
    )
  }
  const raised = wanted.filter(({ wanted: flag }) => !openByKey.has(key(flag.kind, flag.subjectId)))
  if (raised.length > 0) {
    await bookkeeping.sql(
      `insert into flag (site_id, id, kind, subject_id, position_id, shaft_id, fitment_id, area_id, since, urgency, facts)
       select $1::uuid, r.* from jsonb_to_recordset($2::jsonb) as r(id uuid, kind text, subject_id uuid, position_id uuid,
         shaft_id uuid, fitment_id uuid, area_id uuid, since timestamptz, urgency float8, facts jsonb)`,
      [siteId, JSON.stringify(raised.map(flagRow))],
    )
  }
}

function key(kind: string, subjectId: string): string {
  return `${kind} ${subjectId}`
}

function differs(known: OpenFlag, flag: WantedFlag, place: Place): boolean {
  return (
    known.urgency !== flag.urgency ||
    known.area_id !== place.areaId ||
    JSON.stringify(sorted(known.facts)) !== JSON.stringify(sorted(flag.facts))
  )
}

function sorted(facts: FlagFacts): [string, unknown][] {
  return Object.entries(facts)
    .filter((entry) => entry[1] !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
}

function flagRow({ wanted: flag, place }: PlacedFlag) {
  return {
    id: uuidv7(),
    kind: flag.kind,
    subject_id: flag.subjectId,
    position_id: place.positionId,
    shaft_id: place.shaftId,
    fitment_id: place.fitmentId,
    area_id: place.areaId,
    since: flag.since,
    urgency: flag.urgency,
    facts: flag.facts,
  }
}

function placeOf(row: PositionRow, flag: WantedFlag): Place {
  const fitmentId = row.fitment?.fitmentId === flag.subjectId ? flag.subjectId : null
  return { positionId: row.position_id, shaftId: null, fitmentId, areaId: row.area_id }
}

function inMicrometres(mount: MountRow): MountFacts {
  return {
    ...mount,
    reductionUm: umFromNm(mount.reductionNm),
    mountedMeanUm: umFromNm(mount.mountedMeanNm),
    bandMinUm: umFromNm(mount.bandMinNm),
    bandMaxUm: umFromNm(mount.bandMaxNm),
    residualMinUm: umFromNm(mount.residualMinNm),
    expandedUncertaintyUm: umFromNm(mount.expandedUncertaintyNm),
  }
}

const positionFactsSql = `
  select p.id as position_id, m.area_id, p.retired_at is not null as retired,
    case when f.id is null then null else jsonb_build_object('fitmentId', f.id, 'fittedAt', f.fitted_at, 'designation', t.designation) end
      as fitment,
    case when r.id is null then null else jsonb_build_object('mountRecordId', r.id, 'mountedAt', r.mounted_at,
      'verdict', r.verdict, 'residual', r.residual, 'reductionNm', r.reduction_nm, 'mountedMeanNm', r.mounted_mean_nm,
      'bandMinNm', r.band_min_nm, 'bandMaxNm', r.band_max_nm, 'residualMinNm', r.residual_min_nm,
      'expandedUncertaintyNm', r.expanded_uncertainty_nm, 'bandSource', r.judgement->'band'->'source'->>'title',
      'doAgainReason', (
        select case when e.kind = 'do-again' then e.reason end from mount_decision e
        where e.site_id = r.site_id and e.mount_record_id = r.id order by e.decided_at desc, e.id desc limit 1)) end as mount,
    coalesce((
      select jsonb_agg(jsonb_build_object('planId', d.id, 'task', d.task, 'state', d.state, 'dueOn', d.due_on,
        'overdueOn', d.overdue_on, 'dueBy', d.due_by, 'dueRunHours', d.due_run_hours, 'estimated', d.estimated,
        'intervalHours', plan.interval_hours, 'doseG', plan.dose_g, 'greaseName', g.name) order by d.id)
      from grease_due d
      join grease_plan plan on plan.site_id = d.site_id and plan.id = d.id
      left join grease g on g.site_id = plan.site_id and g.id = plan.grease_id
      where d.site_id = p.site_id and d.position_id = p.id), '[]') as dues,
    ${observedOf('p', 'f')} as observed,
    ${openChange('p')} as change,
    ${plansInForce('p')} as plans,
    ${placeToday('s', 'coalesce(t.id, p.bearing_type_id)')} as place
  from position p
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
  left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
  left join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
  left join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
  where p.site_id = $1::uuid and p.id = any($2::uuid[])`

const shaftFactsSql = `
  select s.id as shaft_id, m.area_id, s.locating_override_reason as override_reason,
    coalesce((
      select jsonb_agg(jsonb_build_object('tag', p.tag, 'locating', p.locating) order by p.tag)
      from position p where p.site_id = s.site_id and p.shaft_id = s.id and p.retired_at is null
    ), '[]') as positions
  from shaft s join machine m on m.site_id = s.site_id and m.id = s.machine_id
  where s.site_id = $1::uuid and s.id = any($2::uuid[])`
