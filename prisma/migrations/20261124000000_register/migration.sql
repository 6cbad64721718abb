-- The register: sites and people (shared by all sites), then every table that a site owns.
-- A site-owned row has the key (site_id, id); every constraint and index on it starts with site_id.
-- Clearances are whole nanometres (suffix _nm); other lengths are millimetres; run hours count from a meter.

create extension if not exists btree_gist;

create domain person_role as text check (value in ('technician', 'stores', 'engineer', 'manager'));
create domain seat_kind as text check (value in ('adapter-sleeve', 'withdrawal-sleeve', 'tapered-journal', 'cylindrical'));
create domain shaft_system as text check (value in ('metric', 'inch'));
create domain shaft_attitude as text check (value in ('horizontal', 'inclined', 'vertical'));
create domain bearing_kind as text check (value in ('spherical-roller', 'self-aligning-ball', 'deep-groove-ball', 'cylindrical-roller', 'tapered-roller', 'angular-contact-ball', 'other'));
create domain taper as text check (value in ('1:12', '1:30'));
create domain clearance_class as text check (value in ('C2', 'CN', 'C3', 'C4', 'C5'));
create domain hours_source as text check (value in ('meter', 'estimate', 'none'));
create domain reading_moment as text check (value in ('bench', 'mounted'));
create domain bearing_row as text check (value in ('A', 'B'));
create domain reduction_verdict as text check (value in ('inside', 'under', 'over', 'not-proven'));
create domain residual_verdict as text check (value in ('enough', 'too-small', 'not-proven', 'no-minimum'));
create domain mount_method as text check (value in ('feeler', 'drive-up', 'by-feel'));
create domain end_kind as text check (value in ('failed', 'not-failed', 'lost'));
create domain part_kind as text check (value in ('bearing', 'sleeve', 'nut', 'washer', 'clip', 'ring', 'seal', 'cover', 'grease', 'bolts', 'consumable', 'other'));
create domain kit_need as text check (value in ('must', 'may'));
create domain grease_entry as text check (value in ('side', 'outer-ring-groove'));
create domain plan_source as text check (value in ('computed', 'by-hand'));
create domain greasing_kind as text check (value in ('regreasing', 'initial-fill'));
create domain due_state as text check (value in ('never-greased', 'not-due', 'due-soon', 'due', 'overdue', 'missed'));
create domain window_result as text check (value in ('met', 'early', 'late', 'missed', 'wrong-amount', 'no-window'));
create domain reading_kind as text check (value in ('reading', 'exchange'));
create domain flag_kind as text check (value in ('greasing-overdue', 'never-greased', 'mount-under', 'mount-over', 'mount-not-proven', 'residual-too-small', 'no-mount-record', 'no-locating', 'several-locating'));

-- Shared by all sites -------------------------------------------------------------------------------------------

create table site (
  id uuid primary key,
  code text not null unique check (code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  name text not null,
  time_zone text not null,
  settings jsonb not null default '{}',
  created_at timestamptz not null default now()
);

create table person (
  id uuid primary key,
  email text not null unique check (email = lower(email)),
  name text not null,
  password_hash text not null,
  disabled_at timestamptz,
  created_at timestamptz not null default now()
);

create table membership (
  person_id uuid not null references person (id),
  site_id uuid not null references site (id),
  role person_role not null,
  primary key (person_id, site_id)
);
create index membership_site on membership (site_id, person_id);

create table session (
  id uuid primary key,
  token_hash bytea not null unique,
  person_id uuid not null references person (id),
  created_at timestamptz not null default now(),
  expires_at timestamptz not null
);
create index session_person on session (person_id);
create index session_expires on session (expires_at);

-- Where a bearing sits ------------------------------------------------------------------------------------------

create table area (
  site_id uuid not null references site (id),
  id uuid not null,
  code text not null,
  name text not null,
  walking_order integer not null default 0,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, code)
);

create table machine (
  site_id uuid not null,
  id uuid not null,
  area_id uuid not null,
  tag text not null,
  name text not null,
  kind text not null,
  standby boolean not null default false,
  hours_per_day double precision not null default 24 check (hours_per_day between 0 and 24),
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, tag),
  foreign key (site_id, area_id) references area (site_id, id)
);
create index machine_area on machine (site_id, area_id, tag);

create table shaft (
  site_id uuid not null,
  id uuid not null,
  machine_id uuid not null,
  code text not null,
  name text not null,
  speed_rpm double precision check (speed_rpm > 0),
  hollow_bore_mm double precision not null default 0 check (hollow_bore_mm >= 0),
  attitude shaft_attitude not null default 'horizontal',
  locating_override_reason text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, machine_id, code),
  foreign key (site_id, machine_id) references machine (site_id, id)
);

create table meter (
  site_id uuid not null,
  id uuid not null,
  machine_id uuid not null,
  name text not null,
  rollover_at_hours double precision check (rollover_at_hours > 0),
  -- kept by the service with every reading: the newest one, and the machine's hours over all exchanges
  last_read_at timestamptz,
  last_total_hours double precision,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, machine_id),
  foreign key (site_id, machine_id) references machine (site_id, id)
);

create table meter_reading (
  site_id uuid not null,
  id uuid not null,
  meter_id uuid not null,
  kind reading_kind not null,
  read_at timestamptz not null,
  -- what the display showed; at an exchange the display of the old meter, then of the new one
  shown_hours double precision not null check (shown_hours >= 0),
  new_meter_shows_hours double precision check (new_meter_shows_hours >= 0),
  total_hours double precision not null check (total_hours >= 0),
  read_by uuid not null references person (id),
  corrects_id uuid,
  correction_reason text,
  created_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, meter_id) references meter (site_id, id),
  foreign key (site_id, corrects_id) references meter_reading (site_id, id),
  unique (site_id, corrects_id),
  check ((kind = 'exchange') = (new_meter_shows_hours is not null)),
  check ((corrects_id is null) = (correction_reason is null))
);
create index meter_reading_time on meter_reading (site_id, meter_id, read_at desc);

create table bearing_type (
  site_id uuid not null references site (id),
  id uuid not null,
  designation text not null,
  basic_code text not null,
  series text not null,
  kind bearing_kind not null,
  bore_mm double precision not null check (bore_mm > 0),
  outside_diameter_mm double precision not null check (outside_diameter_mm > 0),
  width_mm double precision not null check (width_mm > 0),
  taper taper,
  clearance_class clearance_class not null default 'CN',
  mass_kg double precision check (mass_kg > 0),
  dynamic_load_rating_kn double precision check (dynamic_load_rating_kn > 0),
  static_load_rating_kn double precision check (static_load_rating_kn > 0),
  sealed boolean not null default false,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, designation),
  check (outside_diameter_mm > bore_mm)
);

create table grease (
  site_id uuid not null references site (id),
  id uuid not null,
  name text not null,
  thickener text not null,
  nlgi_grade text not null,
  base_oil_viscosity_40c_mm2s double precision check (base_oil_viscosity_40c_mm2s > 0),
  code text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, name)
);

create table maker_chart (
  site_id uuid not null references site (id),
  id uuid not null,
  maker text not null,
  document text not null,
  edition text not null,
  page text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, document, edition)
);

create table maker_chart_row (
  site_id uuid not null,
  id uuid not null,
  chart_id uuid not null,
  over_mm double precision not null,
  incl_mm double precision not null,
  taper taper not null,
  reduction_min_nm integer not null check (reduction_min_nm > 0),
  reduction_max_nm integer not null,
  residual_min_cn_nm integer,
  residual_min_c3_nm integer,
  residual_min_c4_nm integer,
  drive_up_min_mm double precision,
  drive_up_max_mm double precision,
  primary key (site_id, id),
  foreign key (site_id, chart_id) references maker_chart (site_id, id),
  check (incl_mm > over_mm),
  check (reduction_max_nm > reduction_min_nm),
  exclude using gist (site_id with =, chart_id with =, taper with =, numrange(over_mm::numeric, incl_mm::numeric, '(]') with &&)
);

create table part (
  site_id uuid not null references site (id),
  id uuid not null,
  number text not null,
  designation text not null,
  kind part_kind not null,
  description text not null default '',
  bin text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, number)
);
create index part_designation on part (site_id, designation);

create table kit (
  site_id uuid not null references site (id),
  id uuid not null,
  name text not null,
  note text not null default '',
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, name)
);

create table kit_line (
  site_id uuid not null,
  id uuid not null,
  kit_id uuid not null,
  line_number integer not null,
  part_id uuid not null,
  quantity double precision not null check (quantity > 0),
  unit text not null default 'pc',
  need kit_need not null default 'must',
  reason text not null default '',
  primary key (site_id, id),
  unique (site_id, kit_id, line_number),
  foreign key (site_id, kit_id) references kit (site_id, id),
  foreign key (site_id, part_id) references part (site_id, id)
);
create index kit_line_part on kit_line (site_id, part_id, kit_id);

create table position (
  site_id uuid not null,
  id uuid not null,
  shaft_id uuid not null,
  tag text not null,
  name text not null,
  locating boolean not null,
  seat seat_kind not null default 'adapter-sleeve',
  shaft_system shaft_system not null default 'metric',
  shaft_diameter_mm double precision check (shaft_diameter_mm > 0),
  housing_code text,
  housing_seat_width_mm double precision check (housing_seat_width_mm > 0),
  bearing_type_id uuid not null,
  kit_id uuid,
  maker_chart_id uuid,
  own_reduction_min_nm integer check (own_reduction_min_nm > 0),
  own_reduction_max_nm integer,
  own_residual_min_nm integer check (own_residual_min_nm >= 0),
  own_band_source text,
  retired_at timestamptz,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, tag),
  foreign key (site_id, shaft_id) references shaft (site_id, id),
  foreign key (site_id, bearing_type_id) references bearing_type (site_id, id),
  foreign key (site_id, kit_id) references kit (site_id, id),
  foreign key (site_id, maker_chart_id) references maker_chart (site_id, id),
  check ((own_reduction_min_nm is null) = (own_reduction_max_nm is null)),
  check ((own_reduction_min_nm is null) = (own_band_source is null)),
  check (own_reduction_max_nm > own_reduction_min_nm)
);
create index position_shaft on position (site_id, shaft_id);
create index position_kit on position (site_id, kit_id);
create index position_bearing_type on position (site_id, bearing_type_id);

-- What was fitted, measured, removed -----------------------------------------------------------------------------

create table bearing (
  site_id uuid not null,
  id uuid not null,
  bearing_type_id uuid not null,
  serial text,
  lot text,
  maker text,
  packed_on date,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, serial),
  foreign key (site_id, bearing_type_id) references bearing_type (site_id, id)
);

create table fitment (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  bearing_id uuid not null,
  fitted_at timestamptz not null,
  removed_at timestamptz,
  fitted tstzrange not null generated always as (tstzrange(fitted_at, removed_at, '[)')) stored,
  start_run_hours double precision,
  end_run_hours double precision,
  run_hours double precision check (run_hours >= 0),
  hours_source hours_source not null default 'none',
  -- age when the register first knew the bearing: it joins the risk set there, not at 0
  entry_age_hours double precision not null default 0 check (entry_age_hours >= 0),
  -- the records that count: the latest correction of each
  mount_record_id uuid,
  removal_id uuid,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, bearing_id) references bearing (site_id, id),
  check (removed_at > fitted_at),
  constraint one_bearing_at_a_time exclude using gist (site_id with =, position_id with =, fitted with &&),
  constraint one_place_at_a_time exclude using gist (site_id with =, bearing_id with =, fitted with &&)
);
create index fitment_position on fitment (site_id, position_id, fitted_at desc);
create index fitment_bearing on fitment (site_id, bearing_id, fitted_at desc);
create unique index fitment_open on fitment (site_id, position_id) where removed_at is null;

create table mount_record (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  bearing_id uuid not null,
  -- set by the signature, which opens the fitment
  fitment_id uuid,
  mounted_at timestamptz not null,
  run_hours double precision check (run_hours >= 0),
  no_hours_reason text,
  fitter text not null,
  checker text,
  permit_reference text,
  reason text not null,
  method mount_method not null,
  by_feel_person text,
  sleeve_code text,
  nut_code text,
  locking_code text,
  ring_count integer check (ring_count between 0 and 2),
  ring_width_mm double precision check (ring_width_mm > 0),
  shaft_diameter_mm double precision check (shaft_diameter_mm > 0),
  temperature_c double precision,
  gauge text,
  zero_point_method text,
  drive_up_mm double precision check (drive_up_mm >= 0),
  nut_angle_deg double precision check (nut_angle_deg >= 0),
  grease_id uuid,
  grease_bearing_g double precision check (grease_bearing_g >= 0),
  grease_housing_g double precision check (grease_housing_g >= 0),
  cap_bolt_torque_nm double precision check (cap_bolt_torque_nm > 0),
  turns_free boolean,
  note text not null default '',
  out_of_band_reason text,
  -- what a draft tells so far of the bearing that comes out; the signature makes it a removal
  removal_draft jsonb,
  -- judged when written, kept with the inputs, the source of the band and the version of the formulas
  clearance_class clearance_class,
  bench_mean_nm integer,
  mounted_mean_nm integer,
  reduction_nm integer,
  band_min_nm integer,
  band_max_nm integer,
  residual_min_nm integer,
  expanded_uncertainty_nm integer,
  verdict reduction_verdict,
  residual residual_verdict,
  judgement jsonb,
  formula_version text,
  signed_at timestamptz,
  signed_by uuid references person (id),
  corrects_id uuid,
  correction_reason text,
  created_by uuid not null references person (id),
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, bearing_id) references bearing (site_id, id),
  foreign key (site_id, fitment_id) references fitment (site_id, id),
  foreign key (site_id, grease_id) references grease (site_id, id),
  foreign key (site_id, corrects_id) references mount_record (site_id, id),
  unique (site_id, corrects_id),
  check ((signed_at is null) = (signed_by is null)),
  check ((signed_at is null) = (fitment_id is null)),
  check (signed_at is null or removal_draft is null),
  check ((corrects_id is null) = (correction_reason is null)),
  check (method <> 'by-feel' or by_feel_person is not null)
);
create index mount_record_position on mount_record (site_id, position_id, mounted_at desc);
create index mount_record_time on mount_record (site_id, mounted_at desc, id desc);
create index mount_record_fitment on mount_record (site_id, fitment_id);

create table mount_reading (
  site_id uuid not null,
  id uuid not null,
  mount_record_id uuid not null,
  moment reading_moment not null,
  bearing_row bearing_row not null,
  reading_number integer not null,
  clearance_nm integer not null check (clearance_nm between 0 and 2000000),
  typed_value text not null,
  typed_unit text not null,
  primary key (site_id, id),
  unique (site_id, mount_record_id, moment, bearing_row, reading_number),
  foreign key (site_id, mount_record_id) references mount_record (site_id, id)
);

create table removal (
  site_id uuid not null,
  id uuid not null,
  fitment_id uuid not null,
  position_id uuid not null,
  removed_at timestamptz not null,
  run_hours double precision check (run_hours >= 0),
  no_hours_reason text,
  end_kind end_kind not null,
  mode_clause text,
  cause text,
  detection text,
  evidence text not null default '',
  observer text not null,
  signed_at timestamptz not null default now(),
  signed_by uuid not null references person (id),
  corrects_id uuid,
  correction_reason text,
  created_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, fitment_id) references fitment (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, corrects_id) references removal (site_id, id),
  unique (site_id, corrects_id),
  check ((corrects_id is null) = (correction_reason is null)),
  check (end_kind <> 'not-failed' or mode_clause is null)
);
create index removal_position on removal (site_id, position_id, removed_at desc);
create index removal_time on removal (site_id, removed_at desc, id desc);
create unique index removal_fitment on removal (site_id, fitment_id) where corrects_id is null;

alter table fitment
  add foreign key (site_id, mount_record_id) references mount_record (site_id, id),
  add foreign key (site_id, removal_id) references removal (site_id, id);

-- Grease ------------------------------------------------------------------------------------------------------------

create table grease_plan (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  grease_id uuid not null,
  entry grease_entry not null,
  dose_g double precision not null check (dose_g > 0),
  interval_hours double precision not null check (interval_hours > 0),
  calendar_months integer not null default 12 check (calendar_months between 1 and 60),
  source plan_source not null,
  reason text not null default '',
  duty jsonb not null default '{}',
  ended_at timestamptz,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, grease_id) references grease (site_id, id)
);
create unique index grease_plan_current on grease_plan (site_id, position_id) where ended_at is null;

create table greasing (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  plan_id uuid,
  kind greasing_kind not null,
  greased_at timestamptz not null,
  run_hours double precision check (run_hours >= 0),
  hours_source hours_source not null default 'none',
  grease_id uuid not null,
  dose_g double precision not null check (dose_g > 0),
  -- what the plan asked for when it was done, and how it was met
  planned_dose_g double precision,
  window_result window_result not null,
  note text not null default '',
  signed_at timestamptz not null default now(),
  signed_by uuid not null references person (id),
  corrects_id uuid,
  correction_reason text,
  withdrawn boolean not null default false,
  created_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, plan_id) references grease_plan (site_id, id),
  foreign key (site_id, grease_id) references grease (site_id, id),
  foreign key (site_id, corrects_id) references greasing (site_id, id),
  unique (site_id, corrects_id),
  check ((corrects_id is null) = (correction_reason is null)),
  check (not withdrawn or corrects_id is not null)
);
create index greasing_position on greasing (site_id, position_id, greased_at desc);
create index greasing_time on greasing (site_id, greased_at desc, id desc);

-- What the due list shows, one row a current plan (same id), kept with every greasing, meter reading and plan change.
create table grease_due (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  area_id uuid not null,
  last_greasing_id uuid,
  last_greased_at timestamptz,
  due_on date not null,
  due_run_hours double precision,
  due_by text not null check (due_by in ('hours', 'calendar', 'never-greased')),
  estimated boolean not null default false,
  due_soon_on date not null,
  overdue_on date not null,
  missed_on date not null,
  state due_state not null,
  primary key (site_id, id),
  foreign key (site_id, id) references grease_plan (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, area_id) references area (site_id, id),
  foreign key (site_id, last_greasing_id) references greasing (site_id, id)
);
create unique index grease_due_position on grease_due (site_id, position_id);
create index grease_due_day on grease_due (site_id, due_on, id);
create index grease_due_area on grease_due (site_id, area_id, due_on, id);
create index grease_due_turning on grease_due (site_id, state, due_soon_on, overdue_on, missed_on);

-- Flags --------------------------------------------------------------------------------------------------------------

create table flag (
  site_id uuid not null,
  id uuid not null,
  kind flag_kind not null,
  -- a position's flags name it; a shaft's flags name the shaft only
  subject_id uuid not null,
  position_id uuid,
  shaft_id uuid,
  fitment_id uuid,
  area_id uuid not null,
  since timestamptz not null,
  -- the higher, the more pressing: by kind, then by how far out or how late
  urgency double precision not null,
  facts jsonb not null default '{}',
  put_off_until date,
  put_off_reason text,
  put_off_by uuid references person (id),
  cleared_at timestamptz,
  cleared_by uuid references person (id),
  cleared_how text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, shaft_id) references shaft (site_id, id),
  foreign key (site_id, fitment_id) references fitment (site_id, id),
  foreign key (site_id, area_id) references area (site_id, id),
  check ((put_off_until is null) = (put_off_reason is null)),
  check ((cleared_at is null) = (cleared_how is null))
);
create unique index flag_open_once on flag (site_id, kind, subject_id) where cleared_at is null;
create index flag_list on flag (site_id, urgency desc, id) where cleared_at is null;
create index flag_area on flag (site_id, area_id, urgency desc, id) where cleared_at is null;
create index flag_kind_list on flag (site_id, kind, urgency desc, id) where cleared_at is null;
create index flag_position on flag (site_id, position_id) where cleared_at is null;
create index flag_returning on flag (site_id, put_off_until) where cleared_at is null and put_off_until is not null;

create table audit_entry (
  site_id uuid not null references site (id),
  id uuid not null default gen_random_uuid(),
  at timestamptz not null default now(),
  person_id uuid,
  table_name text not null,
  row_id uuid not null,
  action text not null check (action in ('insert', 'update', 'delete')),
  before jsonb,
  after jsonb,
  primary key (site_id, id)
);
create index audit_entry_time on audit_entry (site_id, at desc, id desc);
create index audit_entry_row on audit_entry (site_id, table_name, row_id, at desc);

-- Which request made a record: the same id with the same body is answered again, with another body it is refused.
create table receipt (
  site_id uuid not null references site (id),
  id uuid not null,
  endpoint text not null,
  body_hash text not null,
  received_at timestamptz not null default now(),
  primary key (site_id, id)
);
