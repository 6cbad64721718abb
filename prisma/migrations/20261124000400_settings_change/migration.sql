-- A change of the site's settings or time zone moves every due date: the next turn of the day works them out again.

alter table site add column refresh_wanted boolean not null default false;
grant update (refresh_wanted) on site to shaftbook_app;

create or replace function keep_access_audit() returns trigger language plpgsql as $$
declare
  old_row jsonb := case when tg_op = 'INSERT' then null else to_jsonb(old) - 'refresh_wanted' end;
  new_row jsonb := case when tg_op = 'DELETE' then null else to_jsonb(new) - 'refresh_wanted' end;
  kept jsonb := coalesce(new_row, old_row);
begin
  if old_row = new_row then return null; end if;
  insert into audit_entry (site_id, person_id, table_name, row_id, action, before, after)
  values (coalesce(kept->>'site_id', kept->>'id')::uuid, current_person(), tg_table_name,
    coalesce(kept->>'person_id', kept->>'id')::uuid, lower(tg_op), old_row, new_row);
  return null;
end $$;

drop function all_sites();
create function all_sites() returns table (id uuid, time_zone text, refresh_wanted boolean)
  language sql stable security definer set search_path = public, pg_temp
  as $$ select id, time_zone, refresh_wanted from site order by id $$;
revoke execute on function all_sites() from public;
grant execute on function all_sites() to shaftbook_app;
