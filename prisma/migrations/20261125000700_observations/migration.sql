-- What a person observes at a position, how a position goes over from one grease to another, and the day on which a due date
-- was worked out last.

alter domain flag_kind drop constraint flag_kind_check;
alter domain flag_kind add constraint flag_kind_check check (value in (
  'greasing-overdue', 'never-greased', 'task-overdue', 'plan-review', 'running-hot', 'vibration-rise', 'grease-change-open',
  'mount-under', 'mount-over', 'mount-not-proven', 'residual-too-small', 'residual-not-proven', 'no-mount-record',
  'no-locating', 'several-locating'));
create domain vibration_zone as text check (value in ('A', 'B', 'C', 'D'));
create domain change_way as text check (value in ('strip', 'flush', 'lab-first'));
create domain change_state as text check (value in ('lab', 'strip', 'flush', 'finished', 'abandoned'));

alter table grease_due add column worked_out_on date not null default '2000-01-01';
create index grease_due_estimated on grease_due (site_id, worked_out_on) where estimated or due_run_hours is not null;

create table observation (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  -- the record of work that it was made at; it may come later, so that it has no foreign key
  greasing_id uuid,
  observed_at timestamptz not null,
  temperature_c double precision check (temperature_c between -60 and 250),
  vibration_mm_s double precision check (vibration_mm_s between 0 and 500),
  zone vibration_zone,
  relief_closed boolean,
  old_grease_seen boolean,
  note text not null default '',
  signed_at timestamptz not null,
  signed_by uuid not null references person (id),
  withdrawn_at timestamptz,
  withdrawn_by uuid references person (id),
  withdrawn_reason text,
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  check (num_nonnulls(temperature_c, vibration_mm_s, zone, relief_closed, old_grease_seen) > 0 or note <> ''),
  check (num_nulls(withdrawn_at, withdrawn_by, withdrawn_reason) in (0, 3))
);
create index observation_position on observation (site_id, position_id, observed_at desc, id desc);
create index observation_time on observation (site_id, observed_at desc, id desc);
create index observation_greasing on observation (site_id, greasing_id);

create function refuse_observation_change() returns trigger language plpgsql as $$
declare withdrawal text[] := array['withdrawn_at', 'withdrawn_by', 'withdrawn_reason'];
begin
  if tg_op = 'UPDATE' and old.withdrawn_at is null and to_jsonb(old) - withdrawal = to_jsonb(new) - withdrawal then
    return new;
  end if;
  raise exception 'an observation never changes: it is withdrawn, once'
    using errcode = 'integrity_constraint_violation';
end $$;
create trigger signed_stays before update or delete on observation
  for each row execute function refuse_observation_change();

create table grease_change (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  from_grease_id uuid not null,
  to_grease_id uuid not null,
  way change_way not null,
  state change_state not null,
  reason text not null,
  -- the plan as it was, and the one of the new grease at its usual interval is made from it
  plan_before_id uuid not null,
  doses_left integer check (doses_left between 0 and 9),
  started_at timestamptz not null,
  started_by uuid not null references person (id),
  state_since timestamptz not null,
  ended_at timestamptz,
  ended_by uuid references person (id),
  note text not null default '',
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, from_grease_id) references grease (site_id, id),
  foreign key (site_id, to_grease_id) references grease (site_id, id),
  foreign key (site_id, plan_before_id) references grease_plan (site_id, id),
  check (from_grease_id <> to_grease_id),
  check ((state in ('finished', 'abandoned')) = (ended_at is not null)),
  check ((state = 'flush') = (doses_left is not null and ended_at is null))
);
create unique index grease_change_open on grease_change (site_id, position_id) where ended_at is null;
create index grease_change_position on grease_change (site_id, position_id, started_at desc, id desc);
create index grease_change_time on grease_change (site_id, started_at desc, id desc);

do $$
declare owned text;
begin
  foreach owned in array array['observation', 'grease_change'] loop
    execute format('alter table %I enable row level security', owned);
    execute format('alter table %I force row level security', owned);
    execute format(
      'create policy own_site on %I using (site_id = nullif(current_setting(''app.site'', true), '''')::uuid)', owned);
    execute format(
      'create trigger keep_audit after insert or update or delete on %I for each row execute function keep_audit()', owned);
  end loop;
end $$;
create trigger count_version before update on grease_change for each row execute function count_version();

grant select, insert on observation to shaftbook_app;
grant update (withdrawn_at, withdrawn_by, withdrawn_reason) on observation to shaftbook_app;
grant select, insert, update on grease_change to shaftbook_app;
