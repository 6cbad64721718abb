-- Photos of a position and of what was done there. The bytes lie in the store of photos, by their hash; here stands what is
-- known of them. A photo comes before the record that it belongs to, so that the record's id has no foreign key.

create domain photo_subject as text check (value in ('mount', 'removal', 'greasing', 'position'));
create domain sha256_hex as text check (value ~ '^[0-9a-f]{64}$');

create table photo (
  site_id uuid not null,
  id uuid not null,
  position_id uuid not null,
  subject_kind photo_subject not null,
  subject_id uuid not null,
  step text not null default '',
  caption text not null default '',
  media_type text not null,
  sha256 sha256_hex not null,
  width_px integer not null check (width_px > 0),
  height_px integer not null check (height_px > 0),
  size_bytes integer not null check (size_bytes > 0),
  small_sha256 sha256_hex not null,
  taken_at timestamptz not null,
  added_at timestamptz not null,
  added_by uuid not null references person (id),
  withdrawn_at timestamptz,
  withdrawn_by uuid references person (id),
  withdrawn_reason text,
  created_at timestamptz not null default now(),
  primary key (site_id, id),
  foreign key (site_id, position_id) references position (site_id, id),
  check (subject_kind <> 'position' or subject_id = position_id),
  check ((withdrawn_at is null) = (withdrawn_by is null) and (withdrawn_at is null) = (withdrawn_reason is null))
);
create index photo_newest on photo (site_id, taken_at, id);
create index photo_of_position on photo (site_id, position_id, taken_at, id);
create index photo_of_subject on photo (site_id, subject_id, taken_at, id);

alter table photo enable row level security;
alter table photo force row level security;
create policy own_site on photo using (site_id = nullif(current_setting('app.site', true), '')::uuid);

create trigger keep_audit after insert or update or delete on photo for each row execute function keep_audit();

create function refuse_photo_change() returns trigger language plpgsql as $$
declare withdrawal text[] := array['withdrawn_at', 'withdrawn_by', 'withdrawn_reason'];
begin
  if tg_op = 'UPDATE' and old.withdrawn_at is null and to_jsonb(old) - withdrawal = to_jsonb(new) - withdrawal then
    return new;
  end if;
  raise exception 'a photo never changes: it is withdrawn, once'
    using errcode = 'integrity_constraint_violation';
end $$;
create trigger added_stays before update or delete on photo for each row execute function refuse_photo_change();

grant select, insert on photo to shaftbook_app;
grant update (withdrawn_at, withdrawn_by, withdrawn_reason) on photo to shaftbook_app;
