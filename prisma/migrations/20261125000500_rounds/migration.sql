-- Grease guns, rounds with their stops in walking order, and the walks of a round with what was done at each stop.

create domain stop_outcome as text check (value in ('done', 'checked', 'skipped'));

create table gun (
  site_id uuid not null references site (id),
  id uuid not null,
  name text not null,
  grams_per_stroke double precision not null check (grams_per_stroke between 0.1 and 10),
  calibrated_on date,
  strokes_weighed integer check (strokes_weighed between 1 and 1000),
  -- what it is loaded with; null: nothing, or nobody knows
  grease_id uuid,
  note text not null default '',
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, name),
  foreign key (site_id, grease_id) references grease (site_id, id)
);

create table round (
  site_id uuid not null references site (id),
  id uuid not null,
  name text not null,
  note text not null default '',
  retired boolean not null default false,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, name)
);

create table round_stop (
  site_id uuid not null,
  id uuid not null,
  round_id uuid not null,
  stop_number integer not null check (stop_number >= 1),
  position_id uuid not null,
  task grease_task not null,
  primary key (site_id, id),
  foreign key (site_id, round_id) references round (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  unique (site_id, round_id, position_id, task),
  unique (site_id, round_id, stop_number)
);
create index round_stop_position on round_stop (site_id, position_id);

create table round_walk (
  site_id uuid not null,
  id uuid not null,
  round_id uuid not null,
  -- the stops as they were when it began: a round may be changed while it is walked
  stops jsonb not null,
  started_at timestamptz not null,
  started_by uuid not null references person (id),
  ended_at timestamptz,
  ended_by uuid references person (id),
  note text not null default '',
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, round_id) references round (site_id, id),
  check ((ended_at is null) = (ended_by is null))
);
create index round_walk_time on round_walk (site_id, started_at desc, id desc);
create index round_walk_round on round_walk (site_id, round_id, started_at desc, id desc);

-- Who greased by which gun and on which walk; the dose stays the strokes times what a stroke weighed that day.
alter table greasing
  add column walk_id uuid,
  add column stop_id uuid,
  add column gun_id uuid,
  add column strokes integer check (strokes between 1 and 10000),
  add column grams_per_stroke double precision check (grams_per_stroke between 0.1 and 10),
  add foreign key (site_id, walk_id) references round_walk (site_id, id),
  add foreign key (site_id, gun_id) references gun (site_id, id),
  add check ((walk_id is null) = (stop_id is null)),
  add check ((strokes is null) = (grams_per_stroke is null));

create table walk_stop (
  site_id uuid not null,
  id uuid not null,
  walk_id uuid not null,
  -- the stop of the round as the walk took it along; a round replaces its stops, so that it has no foreign key
  stop_id uuid not null,
  position_id uuid not null,
  task grease_task not null,
  outcome stop_outcome not null,
  done_at timestamptz not null,
  reason text not null default '',
  greasing_id uuid,
  overdose_confirmed boolean not null default false,
  extra_reason text not null default '',
  old_grease text check (old_grease in ('none', 'like-new', 'dark', 'hard', 'milky', 'metal')),
  relief_closed boolean,
  temperature_c double precision check (temperature_c between -60 and 300),
  note text not null default '',
  signed_at timestamptz not null,
  signed_by uuid not null references person (id),
  primary key (site_id, id),
  foreign key (site_id, walk_id) references round_walk (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  foreign key (site_id, greasing_id) references greasing (site_id, id),
  constraint walk_stop_once unique (site_id, walk_id, stop_id),
  check (outcome <> 'done' or greasing_id is not null),
  check (outcome <> 'skipped' or (reason <> '' and greasing_id is null))
);
create index walk_stop_position on walk_stop (site_id, position_id, done_at desc);

do $$
declare owned text;
begin
  foreach owned in array array['gun', 'round', 'round_stop', 'round_walk', 'walk_stop'] loop
    execute format('alter table %I enable row level security', owned);
    execute format('alter table %I force row level security', owned);
    execute format(
      'create policy own_site on %I using (site_id = nullif(current_setting(''app.site'', true), '''')::uuid)', owned);
    execute format(
      'create trigger keep_audit after insert or update or delete on %I for each row execute function keep_audit()', owned);
  end loop;
end $$;

create trigger count_version before update on gun for each row execute function count_version();
create trigger count_version before update on round for each row execute function count_version();
create trigger count_version before update on round_walk for each row execute function count_version();
create trigger signed_stays before update or delete on walk_stop for each row execute function refuse_change();

grant select, insert, update on gun, round, round_walk to shaftbook_app;
grant select, insert, delete on round_stop to shaftbook_app;
grant select, insert on walk_stop to shaftbook_app;
