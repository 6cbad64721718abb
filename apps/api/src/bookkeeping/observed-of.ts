/** So many of the newest observations are a bearing's history: ten readings of each kind, some rounds with neither. */
const newest = 40

/** SQL for what was observed of the bearing of a fitment's alias at a position's: `ObservedFacts[]`, oldest first. */
export function observedOf(position: string, fitment: string): string {
  return `coalesce((
      select jsonb_agg(jsonb_build_object('observationId', o.id, 'observedAt', o.observed_at, 'temperatureC', o.temperature_c,
        'vibrationMmS', o.vibration_mm_s, 'zone', o.zone) order by o.observed_at, o.id)
      from (
        select v.* from observation v
        where v.site_id = ${position}.site_id and v.position_id = ${position}.id and v.observed_at >= ${fitment}.fitted_at
          and v.withdrawn_at is null and num_nonnulls(v.temperature_c, v.vibration_mm_s, v.zone) > 0
        order by v.observed_at desc, v.id desc limit ${newest}) o), '[]')`
}
