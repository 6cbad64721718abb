/**
 * The board's filters, each as a subquery of ids that starts at the table it asks about: so each is as fast as that table
 * is small, however many positions there are. Arguments are places of parameters, such as $1.
 */
export function shaftsOfArea(site: string, area: string): string {
  return `select s.id from machine m join shaft s on s.site_id = m.site_id and s.machine_id = m.id
    where m.site_id = ${site}::uuid and m.area_id = ${area}::uuid`
}

export function shaftsOfMachine(site: string, machine: string): string {
  return `select s.id from shaft s where s.site_id = ${site}::uuid and s.machine_id = ${machine}::uuid`
}

/** Positions whose bearing was mounted with this verdict. */
export function positionsByVerdict(site: string, verdict: string): string {
  return `select f.position_id from mount_record r
    join fitment f on f.site_id = r.site_id and f.id = r.fitment_id and f.mount_record_id = r.id and f.removed_at is null
    where r.site_id = ${site}::uuid and r.verdict = ${verdict}`
}

export function positionsByDueState(site: string, state: string): string {
  return `select d.position_id from grease_due d where d.site_id = ${site}::uuid and d.state = ${state}`
}

/**
 * Positions found by tag or name, by machine, by the bearing that is meant or fitted (its serial number too), or by a part
 * of the kit. Codes are found with spaces and without: the pattern has none.
 */
export function positionsFound(site: string, pattern: string): string {
  const holds = (...columns: string[]): string =>
    `(${columns.map((column) => `replace(${column}, ' ', '') ilike ${pattern}`).join(' or ')})`
  return `
    select o.id from position o where o.site_id = ${site}::uuid and ${holds('o.tag', 'o.name')}
    union all
    select o.id from machine m join shaft s on s.site_id = m.site_id and s.machine_id = m.id
      join position o on o.site_id = s.site_id and o.shaft_id = s.id
      where m.site_id = ${site}::uuid and ${holds('m.tag', 'm.name')}
    union all
    select o.id from bearing_type t join position o on o.site_id = t.site_id and o.bearing_type_id = t.id
      where t.site_id = ${site}::uuid and ${holds('t.designation')}
    union all
    select f.position_id from bearing_type t join bearing b on b.site_id = t.site_id and b.bearing_type_id = t.id
      join fitment f on f.site_id = b.site_id and f.bearing_id = b.id and f.removed_at is null
      where t.site_id = ${site}::uuid and ${holds('t.designation')}
    union all
    select f.position_id from bearing b
      join fitment f on f.site_id = b.site_id and f.bearing_id = b.id and f.removed_at is null
      where b.site_id = ${site}::uuid and ${holds('b.serial')}
    union all
    select o.id from part join kit_line line on line.site_id = part.site_id and line.part_id = part.id
      join position o on o.site_id = line.site_id and o.kit_id = line.kit_id
      where part.site_id = ${site}::uuid and ${holds('part.number', 'part.designation')}`
}
