import {
  admitPerson,
  changeRole,
  changeSite,
  listAudit,
  listPeople,
  readDeviceKey,
  readSession,
  readSite,
  signIn,
  signOut,
  type Me,
} from '@shaftbook/contract/access'
import type { FastifyInstance, FastifyReply } from 'fastify'
import type { Context } from '../context.ts'
import { DomainError } from '../domain-error.ts'
import { route } from '../http/route.ts'
import * as access from './access.service.ts'
import { verifyPassword } from './passwords.ts'
import {
  closeSession,
  findDeviceKey,
  findSession,
  openSession,
  sessionCookie,
  sessionDays,
  type SignedIn,
} from './session.ts'

export function signInRoutes(app: FastifyInstance, context: Context): void {
  const { db, config } = context
  const limit = { max: config.signInTriesPerMinute, timeWindow: '1 minute', errorResponseBuilder: tooMany }
  app.register(async (limited) => {
    limited.addHook('onRequest', limited.rateLimit(limit))
    route(limited, signIn, async ({ body, reply }) => {
      const [found] = await db.ask<{ person_id: string; password_hash: string }>('select * from sign_in_lookup($1)', [
        body.email,
      ])
      const fits = await verifyPassword(found?.password_hash, body.password)
      if (!found || !fits)
        throw new DomainError('sign-in-failed', 'E-mail or password is not right. Check both and try again.')
      const token = await openSession(db, found.person_id, new Date())
      setCookie(reply, token, config.secureCookies)
      const signedIn = await findSession(db, token)
      if (!signedIn) throw new DomainError('sign-in-failed', 'The session could not be opened: try again.')
      return asMe(signedIn)
    })
  })
}

export function accessRoutes(app: FastifyInstance, context: Context): void {
  const { db, config } = context
  route(app, readSession, async ({ signedIn }) => asMe(signedIn))
  route(app, readDeviceKey, async ({ request, signedIn }) => {
    const key = await findDeviceKey(db, request.cookies[sessionCookie] ?? '')
    if (!key) throw new DomainError('not-signed-in', 'Sign in first: your session is over.')
    return { personId: signedIn.id, key: key.toString('base64') }
  })
  route(app, signOut, async ({ request, reply }) => {
    const token = request.cookies[sessionCookie]
    if (token) await closeSession(db, token)
    reply.clearCookie(sessionCookie, { path: '/', httpOnly: true, sameSite: 'strict', secure: config.secureCookies })
    return undefined
  })
  route(app, readSite, ({ scope }) => access.readSite(db, scope))
  route(app, changeSite, ({ scope, body }) => access.changeSite(db, scope, body))
  route(app, listPeople, ({ scope, query }) => access.listPeople(db, scope, query))
  route(app, admitPerson, ({ scope, body }) => access.admitPerson(db, scope, body))
  route(app, changeRole, ({ scope, params, body }) => access.changeRole(db, scope, params.id, body.role))
  route(app, listAudit, ({ scope, query }) => access.listAudit(db, scope, query))
}

function asMe(signedIn: SignedIn): Me {
  return { id: signedIn.id, name: signedIn.name, email: signedIn.email, memberships: [...signedIn.memberships] }
}

function setCookie(reply: FastifyReply, token: string, secure: boolean): void {
  reply.setCookie(sessionCookie, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    secure,
    maxAge: sessionDays * 86_400,
  })
}

function tooMany(_request: unknown, limit: { after: string }): DomainError {
  return new DomainError('too-many-requests', `Too many tries to sign in: wait ${limit.after} and try again.`)
}
