-- What a person writes without a network is sealed on the device under a key of that person. The key is random, comes to the
-- device after the sign-in and goes from it at the sign-out; three random UUIDs hold more than its 256 bits.
alter table person add column device_key bytea not null
  default sha256(uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid()))
  check (length(device_key) = 32);

create function session_device_key(wanted_token_hash bytea) returns table (device_key bytea)
  language sql stable security definer set search_path = public, pg_temp
  as $$
    select p.device_key
    from session s
    join person p on p.id = s.person_id and p.disabled_at is null
    where s.token_hash = wanted_token_hash and s.expires_at > now()
  $$;
revoke execute on function session_device_key(bytea) from public;
grant execute on function session_device_key(bytea) to shaftbook_app;
