-- The whole mount sheet beside the columns of its record, planned mounts, gauges, what was fitted, and what the engineer
-- decided on a mount that is not proven inside its limits.

alter domain reading_moment drop constraint reading_moment_check;
alter domain reading_moment add constraint reading_moment_check check (value in ('found', 'bench', 'step', 'mounted'));
alter domain flag_kind drop constraint flag_kind_check;
alter domain flag_kind add constraint flag_kind_check check (value in (
  'greasing-overdue', 'never-greased', 'mount-under', 'mount-over', 'mount-not-proven', 'residual-too-small',
  'residual-not-proven', 'no-mount-record', 'no-locating', 'several-locating'));
create domain decision_kind as text check (value in ('accept-until', 'do-again'));
create domain gauge_kind as text check (value in ('feeler-metric', 'feeler-inch', 'other'));

create table mount_plan (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  planned_for date not null,
  reason text not null,
  -- null: the type of the position
  bearing_type_id uuid,
  who text not null default '',
  note text not null default '',
  planned_by uuid not null references person (id),
  -- set by the signature of the mount that it planned, or by dropping it
  ended_at timestamptz,
  mount_record_id uuid,
  dropped_reason text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, bearing_type_id) references bearing_type (site_id, id),
  check ((ended_at is not null) = (mount_record_id is not null or dropped_reason is not null)),
  check (mount_record_id is null or dropped_reason is null)
);
create unique index mount_plan_open on mount_plan (site_id, position_id, planned_for) where ended_at is null;
create index mount_plan_day on mount_plan (site_id, planned_for, id);
create index mount_plan_position on mount_plan (site_id, position_id, planned_for, id);

alter table mount_record
  add column details jsonb not null default '{}',
  add column plan_id uuid,
  add foreign key (site_id, plan_id) references mount_plan (site_id, id);
alter table mount_plan add foreign key (site_id, mount_record_id) references mount_record (site_id, id);

alter table mount_reading
  add column step_number integer check (step_number between 1 and 40),
  add column struck boolean not null default false,
  add check ((moment = 'step') = (step_number is not null)),
  drop constraint mount_reading_site_id_mount_record_id_moment_bearing_row_re_key,
  add constraint mount_reading_number unique nulls not distinct
    (site_id, mount_record_id, moment, step_number, bearing_row, reading_number);

create table mount_decision (
  site_id uuid not null,
  id uuid not null,
  mount_record_id uuid not null,
  kind decision_kind not null,
  until date,
  reason text not null,
  decided_at timestamptz not null,
  decided_by uuid not null references person (id),
  primary key (site_id, id),
  foreign key (site_id, mount_record_id) references mount_record (site_id, id),
  check ((kind = 'accept-until') = (until is not null))
);
create index mount_decision_record on mount_decision (site_id, mount_record_id, decided_at desc);

-- What a signed mount took from the shelf, and what was left out.
create table fitted_part (
  site_id uuid not null,
  id uuid not null,
  mount_record_id uuid not null,
  position_id uuid not null,
  -- the part of the register, where the line names one
  part_id uuid,
  code text not null,
  kind part_kind not null,
  quantity double precision not null check (quantity >= 0),
  unit text not null,
  -- the line of the kit as it was; a kit replaces its lines, so that it has no foreign key
  kit_line_id uuid,
  reason text not null default '',
  primary key (site_id, id),
  foreign key (site_id, mount_record_id) references mount_record (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, part_id) references part (site_id, id)
);
create index fitted_part_record on fitted_part (site_id, mount_record_id);
create index fitted_part_part on fitted_part (site_id, part_id);

create table gauge (
  site_id uuid not null references site (id),
  id uuid not null,
  name text not null,
  kind gauge_kind not null,
  blades_nm integer[] not null,
  checked_until date,
  note text not null default '',
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, name)
);

do $$
declare owned text;
begin
  foreach owned in array array['mount_plan', 'mount_decision', 'fitted_part', 'gauge'] loop
    execute format('alter table %I enable row level security', owned);
    execute format('alter table %I force row level security', owned);
    execute format(
      'create policy own_site on %I using (site_id = nullif(current_setting(''app.site'', true), '''')::uuid)', owned);
    execute format(
      'create trigger keep_audit after insert or update or delete on %I for each row execute function keep_audit()', owned);
  end loop;
end $$;

create trigger count_version before update on mount_plan for each row execute function count_version();
create trigger count_version before update on gauge for each row execute function count_version();
create trigger signed_stays before update or delete on mount_decision for each row execute function refuse_change();
create trigger signed_stays before update or delete on fitted_part for each row execute function refuse_change();

grant select, insert, update on mount_plan, gauge to shaftbook_app;
grant select, insert on mount_decision, fitted_part to shaftbook_app;
