import { z } from 'zod'
import { Id, Instant, Name, page, pageQuery, siteParams } from './common.ts'
import { changeOf } from './change-of.ts'
import { endpoint } from './endpoint.ts'
import { everyone, management, Role } from './roles.ts'
import { sitePath } from './site-path.ts'

export const Email = z.email('Enter an e-mail address').trim().toLowerCase().max(254)
const Password = z.string().min(10, 'A password has at least 10 characters').max(200)

/** The settings of a site that the formulas go by. */
export const SiteSettings = z.object({
  coverageFactor: z.number().min(1).max(4).default(2),
  reductionAcceptance: z.enum(['simple', 'proven']).default('simple'),
  residualAcceptance: z.enum(['simple', 'proven']).default('proven'),
  readingStandardUncertaintyUm: z.number().positive().max(100).nullable().default(null),
  greasingWindowPercent: z.number().min(1).max(50).default(10),
  missedBeyondPercent: z.number().min(10).max(200).default(50),
  minutesPerStop: z.number().min(1).max(240).nullable().default(null),
})
export type SiteSettings = z.infer<typeof SiteSettings>

/** Settings to change: what is left out stays as it is. */
const SiteSettingsChange = changeOf(SiteSettings)

export const Membership = z.object({
  siteId: Id,
  siteCode: z.string(),
  siteName: z.string(),
  timeZone: z.string(),
  role: Role,
})
export const Me = z
  .object({ id: Id, name: z.string(), email: z.string(), memberships: z.array(Membership) })
  .meta({ id: 'Me' })
export type Me = z.infer<typeof Me>

export const signIn = endpoint({
  name: 'sign-in',
  method: 'POST',
  path: '/api/v1/session',
  access: 'public',
  summary: 'Sign in; sets the session cookie',
  body: z.object({ email: Email, password: z.string().min(1, 'Enter your password').max(200) }),
  replies: { 200: Me },
})
export const readSession = endpoint({
  name: 'read-session',
  method: 'GET',
  path: '/api/v1/session',
  access: 'signed-in',
  summary: 'Who is signed in, and the sites and roles',
  replies: { 200: Me },
})
export const signOut = endpoint({
  name: 'sign-out',
  method: 'DELETE',
  path: '/api/v1/session',
  access: 'signed-in',
  summary: 'Sign out; the session ends on the server too',
  replies: { 204: null },
})

export const readDeviceKey = endpoint({
  name: 'read-device-key',
  method: 'GET',
  path: '/api/v1/session/device-key',
  access: 'signed-in',
  summary: 'The key under which a device seals what this person writes without a network; the same on every device',
  replies: {
    200: z.object({ personId: Id, key: z.base64().meta({ description: '32 bytes in Base64' }) }),
  },
})

export const Site = z.object({
  id: Id,
  code: z.string(),
  name: z.string(),
  timeZone: z.string(),
  settings: SiteSettings,
})
export type Site = z.infer<typeof Site>
export const readSite = endpoint({
  name: 'read-site',
  method: 'GET',
  path: '/api/v1/sites/:site',
  access: everyone,
  summary: 'The site and the settings that its verdicts and due dates go by',
  params: siteParams,
  replies: { 200: Site },
})
export const changeSite = endpoint({
  name: 'change-site',
  method: 'PATCH',
  path: '/api/v1/sites/:site',
  access: management,
  summary: 'Change the name, the time zone or settings of the site; old verdicts stay',
  params: siteParams,
  body: z.strictObject({
    name: Name.optional(),
    timeZone: z.string().min(1).max(60).optional(),
    settings: SiteSettingsChange.optional(),
  }),
  replies: { 200: Site },
})

export const Person = z.object({ id: Id, name: z.string(), email: z.string(), role: Role, disabled: z.boolean() })
export type Person = z.infer<typeof Person>
export const listPeople = endpoint({
  name: 'list-people',
  method: 'GET',
  path: sitePath('people'),
  access: everyone,
  summary: 'The people of the site by name',
  params: siteParams,
  query: z.object(pageQuery),
  replies: { 200: page(Person) },
})
export const admitPerson = endpoint({
  name: 'admit-person',
  method: 'POST',
  path: sitePath('people'),
  access: management,
  summary: 'Let a person in at this site; one who signs in at another site already keeps his password',
  params: siteParams,
  body: z.object({ id: Id, name: Name, email: Email, password: Password, role: Role }),
  replies: { 201: Person },
})
export const changeRole = endpoint({
  name: 'change-role',
  method: 'PATCH',
  path: sitePath('people/:id'),
  access: management,
  summary: "Change a person's role at this site",
  params: z.object({ ...siteParams.shape, id: Id }),
  body: z.strictObject({ role: Role }),
  replies: { 200: Person },
})

export const AuditEntry = z.object({
  id: Id,
  at: Instant,
  person: z.string().nullable(),
  table: z.string(),
  rowId: Id,
  action: z.enum(['insert', 'update', 'delete']),
  before: z.record(z.string(), z.unknown()).nullable(),
  after: z.record(z.string(), z.unknown()).nullable(),
})
export const listAudit = endpoint({
  name: 'list-audit-entries',
  method: 'GET',
  path: sitePath('audit-entries'),
  access: ['engineer', 'manager'],
  summary: 'Who changed what and when, newest first',
  params: siteParams,
  query: z.object({ ...pageQuery, table: z.string().max(60).optional(), rowId: Id.optional() }),
  replies: { 200: page(AuditEntry) },
})
