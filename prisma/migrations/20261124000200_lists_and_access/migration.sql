-- Lists are read along an index whatever they are sorted by, and the audit trail keeps who may do what, and the settings.

-- Newest first, most pressing first: both columns run the same way, as the cursor compares them.
drop index flag_list;
drop index flag_area;
drop index flag_kind_list;
create index flag_list on flag (site_id, urgency desc, id desc) where cleared_at is null;
create index flag_area on flag (site_id, area_id, urgency desc, id desc) where cleared_at is null;
create index flag_kind_list on flag (site_id, kind, urgency desc, id desc) where cleared_at is null;
create index flag_cleared on flag (site_id, cleared_at desc, id desc) where cleared_at is not null;
create index flag_shaft on flag (site_id, shaft_id) where cleared_at is null;
create index fitment_time on fitment (site_id, fitted_at desc, id desc);
create index bearing_time on bearing (site_id, created_at, id);
create index machine_name on machine (site_id, name, id);
create index shaft_code on shaft (site_id, code, id);
create index shaft_name on shaft (site_id, name, id);
create index position_name on position (site_id, name, id);
create index part_bin on part (site_id, coalesce(bin, ''), id);
create index bearing_serial on bearing (site_id, coalesce(serial, ''), id);
create index bearing_type_bore on bearing_type (site_id, bore_mm, id);

-- The site and its memberships are not rows with the key (site_id, id): what identifies them is told to the trigger's insert.
create function keep_access_audit() returns trigger language plpgsql as $$
declare
  old_row jsonb := case when tg_op = 'INSERT' then null else to_jsonb(old) end;
  new_row jsonb := case when tg_op = 'DELETE' then null else to_jsonb(new) end;
  kept jsonb := coalesce(new_row, old_row);
begin
  if old_row = new_row then return null; end if;
  insert into audit_entry (site_id, person_id, table_name, row_id, action, before, after)
  values (coalesce(kept->>'site_id', kept->>'id')::uuid, current_person(), tg_table_name,
    coalesce(kept->>'person_id', kept->>'id')::uuid, lower(tg_op), old_row, new_row);
  return null;
end $$;
create trigger keep_audit after update on site for each row execute function keep_access_audit();
create trigger keep_audit after insert or update or delete on membership
  for each row execute function keep_access_audit();
