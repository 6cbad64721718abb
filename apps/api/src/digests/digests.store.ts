import type { MailDigest } from '@shaftbook/contract/greasing-mail'
import type { SiteTx } from '../db/database.ts'

export type DigestSettings = Pick<MailDigest, 'weekdays' | 'hour' | 'areaIds' | 'alsoWhenNothing'>
export type StoredDigest = DigestSettings & Pick<MailDigest, 'lastSentOn' | 'problem'>

export async function findDigest({ sql, scope }: SiteTx, personId: string): Promise<StoredDigest | undefined> {
  const [found] = await sql<StoredDigest>(
    `select weekdays, hour, area_ids as "areaIds", also_when_nothing as "alsoWhenNothing", last_sent_on::text as "lastSentOn", problem
     from mail_digest where site_id = $1::uuid and person_id = $2::uuid`,
    [scope.siteId, personId],
  )
  return found
}

/** Sets when a person gets mails; the problem of the last try is forgotten. */
export async function saveDigest(
  { prisma, scope }: SiteTx,
  digest: DigestSettings & { readonly id: string; readonly personId: string },
): Promise<void> {
  const { siteId } = scope
  const { id, personId, ...settings } = digest
  await prisma.mailDigest.upsert({
    where: { siteId_personId: { siteId, personId } },
    create: { siteId, id, personId, ...settings },
    update: { ...settings, problem: null },
  })
}

/** Which of these areas the site has. */
export async function knownAreas({ sql, scope }: SiteTx, areaIds: readonly string[]): Promise<string[]> {
  const rows = await sql<{ id: string }>('select id from area where site_id = $1::uuid and id = any($2::uuid[])', [
    scope.siteId,
    areaIds,
  ])
  return rows.map(({ id }) => id)
}

/** Whose mail is to be sent now: its day of the week, its hour reached, and none sent on this day of the plant. */
export async function dueDigests({ sql, scope }: SiteTx, clock: { today: string; hour: number }): Promise<string[]> {
  const rows = await sql<{ id: string }>(
    `select d.id from mail_digest d
     where d.site_id = $1::uuid and extract(isodow from $2::date)::smallint = any(d.weekdays) and d.hour <= $3::int
       and (d.last_sent_on is null or d.last_sent_on < $2::date)
     order by d.id`,
    [scope.siteId, clock.today, clock.hour],
  )
  return rows.map(({ id }) => id)
}

export interface HeldDigest {
  readonly email: string
  readonly name: string
  readonly areaIds: readonly string[]
  readonly alsoWhenNothing: boolean
}

/** Holds a mail that is still to be sent on this day, so that no other process sends it; undefined where it is not. */
export async function holdDigest({ sql, scope }: SiteTx, id: string, today: string): Promise<HeldDigest | undefined> {
  const [held] = await sql<HeldDigest>(
    `select person.email, person.name, d.area_ids as "areaIds", d.also_when_nothing as "alsoWhenNothing"
     from mail_digest d
     join membership m on m.site_id = d.site_id and m.person_id = d.person_id
     join person on person.id = m.person_id and person.disabled_at is null
     where d.site_id = $1::uuid and d.id = $2::uuid and (d.last_sent_on is null or d.last_sent_on < $3::date)
     for update of d skip locked`,
    [scope.siteId, id, today],
  )
  return held
}

export async function markSent({ prisma, scope }: SiteTx, id: string, today: string): Promise<void> {
  const { siteId } = scope
  const lastSentOn = new Date(`${today}T00:00:00Z`)
  await prisma.mailDigest.update({ where: { siteId_id: { siteId, id } }, data: { lastSentOn, problem: null } })
}

export async function markProblem({ prisma, scope }: SiteTx, id: string, problem: string): Promise<void> {
  const { siteId } = scope
  await prisma.mailDigest.update({ where: { siteId_id: { siteId, id } }, data: { problem } })
}
