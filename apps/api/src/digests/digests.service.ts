import type { MailDigest } from '@shaftbook/contract/greasing-mail'
import { v7 as uuidv7 } from 'uuid'
import type { SignedIn } from '../access/session.ts'
import type { Context } from '../context.ts'
import type { Scope, SiteTx } from '../db/database.ts'
import { fieldError } from '../domain-error.ts'
import { findDigest, knownAreas, saveDigest, type DigestSettings } from './digests.store.ts'

/** What stands where a person has said nothing: no mail. */
const nothingSaid = { weekdays: [], hour: 6, areaIds: [], alsoWhenNothing: false, lastSentOn: null, problem: null }

export function readDigest(context: Context, scope: Scope, person: SignedIn): Promise<MailDigest> {
  return context.db.withSite(scope, (tx) => shown(context, tx, person))
}

/** Sets when the person who asks gets a mail, and about which areas. The same request again changes nothing. */
export function changeDigest(
  context: Context,
  scope: Scope,
  person: SignedIn,
  settings: DigestSettings,
): Promise<MailDigest> {
  return context.db.withSite(scope, async (tx) => {
    const weekdays = [...new Set(settings.weekdays)].sort((a, b) => a - b)
    const areaIds = [...new Set(settings.areaIds)]
    if ((await knownAreas(tx, areaIds)).length < areaIds.length) {
      throw fieldError('not-found', 'areaIds', 'One of the areas is not at this site: choose them anew.')
    }
    await saveDigest(tx, { ...settings, weekdays, areaIds, id: uuidv7(), personId: person.id })
    return await shown(context, tx, person)
  })
}

async function shown({ config }: Context, tx: SiteTx, person: SignedIn): Promise<MailDigest> {
  const stored = (await findDigest(tx, person.id)) ?? nothingSaid
  return { ...stored, to: person.email, mailReady: config.mail !== undefined }
}
