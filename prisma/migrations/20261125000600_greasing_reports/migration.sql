-- Links to a calendar of what is due, and mails about it. Both belong to one person at one site.

create table calendar_feed (
  site_id uuid not null references site (id),
  id uuid not null,
  person_id uuid not null references person (id),
  -- neither: the whole site; a link outlives its round, so that this has no foreign key
  area_id uuid,
  round_id uuid,
  -- of the 32 random bytes in the link, which are shown once and stored nowhere
  secret_hash bytea not null unique check (length(secret_hash) = 32),
  created_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, area_id) references area (site_id, id),
  check (area_id is null or round_id is null)
);
create index calendar_feed_person on calendar_feed (site_id, person_id, created_at, id);

create table mail_digest (
  site_id uuid not null references site (id),
  id uuid not null,
  person_id uuid not null references person (id),
  -- days of the week by ISO 8601: 1 is Monday
  weekdays smallint[] not null check (weekdays <@ array[1, 2, 3, 4, 5, 6, 7]::smallint[]),
  -- of the plant's clock
  hour smallint not null check (hour between 0 and 23),
  -- none: the whole site
  area_ids uuid[] not null default '{}',
  also_when_nothing boolean not null default false,
  -- the plant's day of the last mail, and what came of the last try where it failed
  last_sent_on date,
  problem text,
  version integer not null default 1,
  created_at timestamptz not null default now(),
  updated_at timestamptz not null default now(),
  primary key (site_id, id),
  unique (site_id, person_id)
);

do $$
declare owned text;
begin
  foreach owned in array array['calendar_feed', 'mail_digest'] loop
    execute format('alter table %I enable row level security', owned);
    execute format('alter table %I force row level security', owned);
    execute format(
      'create policy own_site on %I using (site_id = nullif(current_setting(''app.site'', true), '''')::uuid)', owned);
  end loop;
end $$;
-- the policy above binds the owner too; the function below has to find a link before its site is known
do $$ begin
  execute format('create policy of_secret on calendar_feed for select to %I using (true)', current_user);
end $$;
create trigger keep_audit after insert or update or delete on calendar_feed
  for each row execute function keep_audit();
create trigger keep_audit after insert or update or delete on mail_digest
  for each row execute function keep_audit('last_sent_on', 'problem');
create trigger count_version before update on mail_digest for each row execute function count_version();

grant select, insert, delete on calendar_feed to shaftbook_app;
grant update (secret_hash) on calendar_feed to shaftbook_app;
grant select, insert, update on mail_digest to shaftbook_app;

-- Whose calendar a link opens: read with nobody signed in. A person who was disabled or left the site has no link any more.
create function feed_of_secret(wanted_hash bytea)
  returns table (feed_id uuid, site_id uuid, site_code text, site_name text, time_zone text, area_id uuid, round_id uuid)
  language plpgsql stable security definer set search_path = public, pg_temp
  as $$ begin
    return query
      select f.id, f.site_id, site.code, site.name, site.time_zone, f.area_id, f.round_id
      from calendar_feed f
      join site on site.id = f.site_id
      join membership m on m.site_id = f.site_id and m.person_id = f.person_id
      join person p on p.id = f.person_id and p.disabled_at is null
      where f.secret_hash = wanted_hash;
  end $$;
revoke execute on function feed_of_secret(bytea) from public;
grant execute on function feed_of_secret(bytea) to shaftbook_app;
