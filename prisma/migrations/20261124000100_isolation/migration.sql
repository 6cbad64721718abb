-- Every site sees only its own, every change is remembered, a signed record never changes.

do $$ begin
  create role shaftbook_app nologin nosuperuser nobypassrls;
exception when duplicate_object or unique_violation then null;
end $$;
do $$ begin
  execute format('grant shaftbook_app to %I', current_user);
-- where the server's administrator made the role, granting it is his part
exception when insufficient_privilege then raise notice 'shaftbook_app is not granted to %: %', current_user, sqlerrm;
end $$;

create function current_site() returns uuid language sql stable parallel safe
  as $$ select nullif(current_setting('app.site', true), '')::uuid $$;
create function current_person() returns uuid language sql stable parallel safe
  as $$ select nullif(current_setting('app.person', true), '')::uuid $$;

-- Isolation ---------------------------------------------------------------------------------------------------------
-- The policy spells the setting out: inlined, it is evaluated once a statement and the index on site_id is used.

do $$
declare owned text;
begin
  foreach owned in array array[
    'area', 'machine', 'shaft', 'meter', 'meter_reading', 'bearing_type', 'grease', 'maker_chart', 'maker_chart_row',
    'part', 'kit', 'kit_line', 'position', 'bearing', 'fitment', 'mount_record', 'mount_reading', 'removal',
    'grease_plan', 'greasing', 'grease_due', 'flag', 'audit_entry', 'receipt'
  ] loop
    execute format('alter table %I enable row level security', owned);
    execute format('alter table %I force row level security', owned);
    execute format(
      'create policy own_site on %I using (site_id = nullif(current_setting(''app.site'', true), '''')::uuid)', owned);
  end loop;
end $$;

-- The shared tables are read through the site too; who may sign in where is asked of the functions below, which run as
-- the owner, so that nobody serving requests can list the people or sessions of other sites.
alter table site enable row level security;
create policy own_site on site using (id = nullif(current_setting('app.site', true), '')::uuid);
alter table membership enable row level security;
create policy own_site on membership using (site_id = nullif(current_setting('app.site', true), '')::uuid);
alter table person enable row level security;
create policy own_site on person for select using (exists (
  select from membership m
  where m.person_id = person.id and m.site_id = nullif(current_setting('app.site', true), '')::uuid));
alter table session enable row level security;

create function sign_in_lookup(wanted_email text) returns table (person_id uuid, password_hash text)
  language sql stable security definer set search_path = public, pg_temp
  as $$ select id, person.password_hash from person where email = lower(wanted_email) and disabled_at is null $$;

create function open_session(new_id uuid, new_token_hash bytea, for_person uuid, until timestamptz) returns void
  language sql security definer set search_path = public, pg_temp
  as $$
    delete from session where expires_at < now() and person_id = for_person;
    insert into session (id, token_hash, person_id, expires_at) values (new_id, new_token_hash, for_person, until)
  $$;

create function session_memberships(wanted_token_hash bytea)
  returns table (session_id uuid, person_id uuid, email text, name text, site_id uuid, site_code text, site_name text, time_zone text, role text)
  language sql stable security definer set search_path = public, pg_temp
  as $$
    select s.id, p.id, p.email, p.name, site.id, site.code, site.name, site.time_zone, m.role
    from session s
    join person p on p.id = s.person_id and p.disabled_at is null
    left join membership m on m.person_id = p.id
    left join site on site.id = m.site_id
    where s.token_hash = wanted_token_hash and s.expires_at > now()
    order by site.name
  $$;

create function close_session(wanted_token_hash bytea) returns void
  language sql security definer set search_path = public, pg_temp
  as $$ delete from session where token_hash = wanted_token_hash $$;

-- For jobs that go through all sites, one site at a time.
create function all_sites() returns table (id uuid, time_zone text)
  language sql stable security definer set search_path = public, pg_temp
  as $$ select id, time_zone from site order by id $$;

create function applied_migrations() returns table (name text)
  language plpgsql stable security definer set search_path = public, pg_temp
  as $$ begin
    return query select migration_name::text from _prisma_migrations where finished_at is not null and rolled_back_at is null;
  end $$;

-- A manager adds a person to his own site; someone who already signs in elsewhere keeps his password.
create function admit_person(new_id uuid, new_email text, new_name text, new_password_hash text, new_role text) returns uuid
  language plpgsql security definer set search_path = public, pg_temp
  as $$
  declare admitted uuid;
  begin
    if current_site() is null then raise exception 'no site is chosen'; end if;
    insert into person (id, email, name, password_hash) values (new_id, lower(new_email), new_name, new_password_hash)
      on conflict (email) do nothing;
    select id into admitted from person where email = lower(new_email);
    insert into membership (person_id, site_id, role) values (admitted, current_site(), new_role);
    return admitted;
  end $$;

-- Changes -----------------------------------------------------------------------------------------------------------

create function count_version() returns trigger language plpgsql as $$
begin
  new.version := old.version + 1;
  new.updated_at := now();
  return new;
end $$;

-- Arguments: the derived columns whose change alone is not worth an entry.
create function keep_audit() returns trigger language plpgsql as $$
declare
  old_row jsonb := case when tg_op = 'INSERT' then null else to_jsonb(old) end;
  new_row jsonb := case when tg_op = 'DELETE' then null else to_jsonb(new) end;
  ignored text[] := array['version', 'updated_at'] || tg_argv::text[];
  kept jsonb := coalesce(new_row, old_row);
begin
  if tg_op = 'UPDATE' and (old_row - ignored) = (new_row - ignored) then return null; end if;
  insert into audit_entry (site_id, person_id, table_name, row_id, action, before, after)
  values ((kept->>'site_id')::uuid, current_person(), tg_table_name, (kept->>'id')::uuid, lower(tg_op), old_row, new_row);
  return null;
end $$;

do $$
declare changed text;
begin
  foreach changed in array array[
    'area', 'machine', 'shaft', 'meter', 'bearing_type', 'grease', 'maker_chart', 'part', 'kit', 'position', 'bearing',
    'fitment', 'mount_record', 'grease_plan', 'flag'
  ] loop
    execute format('create trigger count_version before update on %I for each row execute function count_version()', changed);
  end loop;
  foreach changed in array array[
    'area', 'machine', 'shaft', 'bearing_type', 'grease', 'maker_chart', 'maker_chart_row', 'part', 'kit', 'kit_line',
    'position', 'bearing', 'fitment', 'mount_record', 'grease_plan', 'flag'
  ] loop
    execute format(
      'create trigger keep_audit after insert or update or delete on %I for each row execute function keep_audit()', changed);
  end loop;
end $$;
create trigger keep_audit after insert or update or delete on meter
  for each row execute function keep_audit('last_read_at', 'last_total_hours');

create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception 'a signed % never changes: it is corrected by a further record', tg_table_name
    using errcode = 'integrity_constraint_violation';
end $$;

create trigger signed_stays before update or delete on mount_record
  for each row when (old.signed_at is not null) execute function refuse_change();
create trigger signed_stays before update or delete on greasing for each row execute function refuse_change();
create trigger signed_stays before update or delete on removal for each row execute function refuse_change();
create trigger signed_stays before update or delete on meter_reading for each row execute function refuse_change();
create trigger entry_stays before update or delete on audit_entry for each row execute function refuse_change();

create function refuse_signed_reading() returns trigger language plpgsql as $$
begin
  if exists (
    select from mount_record m
    where m.site_id = coalesce(new.site_id, old.site_id) and m.id = coalesce(new.mount_record_id, old.mount_record_id)
      and m.signed_at is not null)
  then
    raise exception 'a signed mount record never changes: it is corrected by a further record'
      using errcode = 'integrity_constraint_violation';
  end if;
  return coalesce(new, old);
end $$;
create trigger signed_stays before insert or update or delete on mount_reading
  for each row execute function refuse_signed_reading();

-- What the service may do --------------------------------------------------------------------------------------------

grant usage on schema public to shaftbook_app;
grant select, insert, update on
  area, machine, shaft, meter, bearing_type, grease, maker_chart, part, kit, position, bearing, fitment, mount_record,
  grease_plan, flag
  to shaftbook_app;
grant select, insert, update, delete on maker_chart_row, kit_line, mount_reading, grease_due to shaftbook_app;
grant select, insert on meter_reading, greasing, removal, audit_entry, receipt to shaftbook_app;
grant select on site to shaftbook_app;
grant update (name, time_zone, settings) on site to shaftbook_app;
grant select, update (role), delete on membership to shaftbook_app;
grant select (id, email, name, disabled_at, created_at) on person to shaftbook_app;

do $$
declare asked text;
begin
  foreach asked in array array[
    'sign_in_lookup(text)', 'open_session(uuid, bytea, uuid, timestamptz)', 'session_memberships(bytea)',
    'close_session(bytea)', 'all_sites()', 'applied_migrations()', 'admit_person(uuid, text, text, text, text)'
  ] loop
    execute format('revoke execute on function %s from public', asked);
    execute format('grant execute on function %s to shaftbook_app', asked);
  end loop;
end $$;
