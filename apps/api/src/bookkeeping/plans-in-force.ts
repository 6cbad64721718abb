/** SQL for the plans in force at the position of an alias, each with its newest review: `PlanFacts[]`. */
export function plansInForce(position: string): string {
  return `coalesce((
      select jsonb_agg(jsonb_build_object('planId', q.id, 'source', q.source, 'duty', q.duty, 'entry', q.entry,
        'doseG', q.dose_g, 'intervalHours', q.interval_hours, 'reviewOn', q.review_on, 'review', (
          select jsonb_build_object('reviewOn', v.review_on, 'intervalHours', v.computed_interval_hours,
            'doseG', v.computed_dose_g)
          from plan_review v where v.site_id = q.site_id and v.plan_id = q.id order by v.decided_at desc, v.id desc limit 1
        )) order by q.id)
      from grease_plan q
      where q.site_id = ${position}.site_id and q.position_id = ${position}.id and q.ended_at is null), '[]')`
}

/** SQL for what the register says of a shaft and a bearing type: `PlaceToday`. */
export function placeToday(shaft: string, bearingTypeId: string): string {
  return `(
      select jsonb_build_object('speedRpm', ${shaft}.speed_rpm, 'attitude', ${shaft}.attitude, 'bearingKind', k.kind,
        'boreMm', k.bore_mm, 'outsideDiameterMm', k.outside_diameter_mm, 'widthMm', k.width_mm)
      from bearing_type k where k.site_id = ${shaft}.site_id and k.id = ${bearingTypeId})`
}
