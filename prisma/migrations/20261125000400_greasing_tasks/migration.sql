-- A position has one current plan a task: regreasing by gun, refilling an automatic lubricator, checking a central system
-- or the oil, changing the oil, turning a shaft that stands by. How a greasing met its window moves beside its signed record,
-- since a greasing that is told of late changes what the later ones met.

create domain grease_task as text check (value in
  ('regrease', 'refill', 'check-system', 'check-oil', 'change-oil', 'turn-shaft'));
create domain grease_way as text check (value in ('gun', 'sealed', 'automatic', 'central', 'oil'));
alter domain flag_kind drop constraint flag_kind_check;
alter domain flag_kind add constraint flag_kind_check check (value in (
  'greasing-overdue', 'never-greased', 'task-overdue', 'plan-review', 'mount-under', 'mount-over', 'mount-not-proven',
  'residual-too-small', 'residual-not-proven', 'no-mount-record', 'no-locating', 'several-locating'));

-- null: sealed for life has no task, and turning a shaft is no way of lubrication
alter table grease_plan
  add column way grease_way default 'gun',
  add column task grease_task default 'regrease',
  add column oil text not null default '',
  add column calendar_days integer check (calendar_days between 1 and 1000),
  add column review_on date,
  add column ended_reason text,
  alter column grease_id drop not null,
  alter column entry drop not null,
  alter column dose_g drop not null,
  alter column interval_hours drop not null,
  alter column calendar_months drop not null,
  alter column calendar_months drop default,
  add check ((way = 'sealed') is true = (task is null)),
  add check ((task = 'turn-shaft') is true = (way is null)),
  add check (task is null or way is null or (way, task) in (
    ('gun', 'regrease'), ('automatic', 'refill'), ('central', 'check-system'), ('oil', 'check-oil'), ('oil', 'change-oil'))),
  add check (task is distinct from 'regrease' or num_nulls(grease_id, entry, dose_g, interval_hours, calendar_months) = 0),
  add check (task is distinct from 'refill' or num_nulls(grease_id, dose_g, calendar_months) = 0),
  add check (task is distinct from 'turn-shaft' or calendar_days is not null),
  add check (task is null or num_nonnulls(interval_hours, calendar_months, calendar_days) > 0),
  add check (ended_at is not null or ended_reason is null);
drop index grease_plan_current;
create unique index grease_plan_current on grease_plan (site_id, position_id, task) nulls not distinct where ended_at is null;
create index grease_plan_review on grease_plan (site_id, review_on) where ended_at is null and review_on is not null;

-- How each greasing met its plan, worked out again whenever one before it, or a reading of the meter, comes to light.
create table greasing_window (
  site_id uuid not null,
  -- the greasing
  id uuid not null,
  position_id uuid not null,
  greased_at timestamptz not null,
  window_result window_result not null,
  -- the one that it is counted from, and when it was due by that
  before_id uuid,
  due_on date,
  due_run_hours double precision,
  worked_out_at timestamptz not null,
  primary key (site_id, id),
  foreign key (site_id, id) references greasing (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, before_id) references greasing (site_id, id)
);
create index greasing_window_result on greasing_window (site_id, window_result, greased_at desc, id desc);
alter table greasing_window enable row level security;
create policy own_site on greasing_window using (site_id = nullif(current_setting('app.site', true), '')::uuid);
-- working a window out for the first time is part of the signature, changing it is an act of its own
create trigger keep_audit after update or delete on greasing_window
  for each row execute function keep_audit('worked_out_at');
grant select, insert, update on greasing_window to shaftbook_app;

-- the owner's own rights are not enough where the policy is forced
alter table greasing no force row level security;
insert into greasing_window (site_id, id, position_id, greased_at, window_result, worked_out_at)
  select site_id, id, position_id, greased_at, window_result, signed_at from greasing;
alter table greasing force row level security;
alter table greasing_window force row level security;

alter table greasing
  drop column window_result,
  add column task grease_task not null default 'regrease',
  alter column kind drop not null,
  alter column grease_id drop not null,
  alter column dose_g drop not null,
  add check ((task = 'regrease') = (kind is not null)),
  add check ((task in ('regrease', 'refill')) = (num_nulls(grease_id, dose_g) = 0)),
  add check (num_nulls(grease_id, dose_g) <> 1);

alter table grease_due
  add column task grease_task not null default 'regrease',
  add column way grease_way default 'gun';
drop index grease_due_position;
create unique index grease_due_position on grease_due (site_id, position_id, task);
create index grease_due_task on grease_due (site_id, task, due_on, id);

-- What the engineer decided when a plan no longer agreed with what it was computed from, or its day of review came.
create table plan_review (
  site_id uuid not null,
  id uuid not null,
  plan_id uuid not null,
  reason text not null,
  review_on date,
  -- what the plan comes to today; as long as it still comes to this, the flag stays down
  computed_interval_hours double precision,
  computed_dose_g double precision,
  decided_at timestamptz not null,
  decided_by uuid not null references person (id),
  primary key (site_id, id),
  foreign key (site_id, plan_id) references grease_plan (site_id, id)
);
create index plan_review_plan on plan_review (site_id, plan_id, decided_at desc);
alter table plan_review enable row level security;
alter table plan_review force row level security;
create policy own_site on plan_review using (site_id = nullif(current_setting('app.site', true), '')::uuid);
create trigger keep_audit after insert or update or delete on plan_review
  for each row execute function keep_audit();
create trigger signed_stays before update or delete on plan_review for each row execute function refuse_change();
grant select, insert on plan_review to shaftbook_app;
