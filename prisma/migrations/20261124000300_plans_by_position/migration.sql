-- The plans of one position, the newest first.
create index grease_plan_position on grease_plan (site_id, position_id, created_at desc, id desc);
create index grease_plan_time on grease_plan (site_id, created_at desc, id desc);
