/**
 * SQL for the machine's hours at the greasing of an alias: the reading of its moment, or else between its neighbours as they
 * are known today, so that it does not matter in which order greasings and readings arrived. Without both neighbours, what
 * was known when it was signed.
 */
export function hoursOfGreasing(alias: string): string {
  const readings = (order: string, condition: string): string => `lateral (
    select r.read_at, r.total_hours from meter_reading r
    where r.site_id = meter.site_id and r.meter_id = meter.id and r.read_at ${condition} ${alias}.greased_at
      and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
    order by r.read_at ${order}, r.created_at ${order} limit 1)`
  const seconds = (from: string, to: string): string => `extract(epoch from ${to} - ${from})::float8`
  return `coalesce((
    select case when before.read_at = ${alias}.greased_at then before.total_hours
      else round((before.total_hours + (after.total_hours - before.total_hours)
        * ${seconds('before.read_at', `${alias}.greased_at`)} / ${seconds('before.read_at', 'after.read_at')})::numeric, 1)::float8
      end
    from position p
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join meter on meter.site_id = s.site_id and meter.machine_id = s.machine_id
    join ${readings('desc', '<=')} before on true
    left join ${readings('asc', '>')} after on true
    where p.site_id = ${alias}.site_id and p.id = ${alias}.position_id
  ), ${alias}.run_hours)`
}
