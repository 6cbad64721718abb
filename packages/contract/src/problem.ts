import { z } from 'zod'

/** One field of the request that is at fault: where it stands, what is wrong, and what was probably meant. */
export const FieldFault = z.object({
  path: z.string().meta({ description: 'Where in the request, e.g. `readings.0.typedValue`' }),
  message: z.string(),
  suggestions: z.array(z.object({ label: z.string(), typedValue: z.string(), typedUnit: z.string() })).optional(),
})
export type FieldFault = z.infer<typeof FieldFault>

/** RFC 9457 problem details. `code` is stable; `detail` is a sentence for the person at the screen. */
export const Problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    code: z.string(),
    detail: z.string(),
    fields: z.array(FieldFault).optional(),
  })
  .meta({ id: 'Problem' })
export type Problem = z.infer<typeof Problem>

/** Every code that the service answers with, its status and the short title. One table: nothing else knows a status. */
export const problemCodes = {
  'request-invalid': [400, 'The request is not complete or not readable'],
  'not-signed-in': [401, 'Sign in first'],
  'sign-in-failed': [401, 'E-mail or password is not right'],
  'role-not-allowed': [403, 'Your role at this site may not do this'],
  'origin-not-allowed': [403, 'The request came from another web site'],
  'not-found': [404, 'There is no such record at this site'],
  'method-not-allowed': [405, 'This address does not do that'],
  'id-already-used': [409, 'This id already stands for another record'],
  'name-already-used': [409, 'This name is already taken at this site'],
  'position-occupied': [409, 'The position already carries a bearing'],
  'bearing-fitted-elsewhere': [409, 'This bearing is fitted at another position'],
  'already-signed': [409, 'The record is already signed'],
  'already-corrected': [409, 'The record was already corrected'],
  'flag-already-cleared': [409, 'The flag is already cleared'],
  'already-withdrawn': [409, 'This was withdrawn already'],
  'position-changed': [409, 'The position has changed since the sheet was begun'],
  'band-changed': [409, 'The band has changed since the sheet was begun'],
  'kit-changed': [409, 'The kit has changed since the sheet was begun'],
  'plan-closed': [409, 'The planned mount is closed'],
  'stop-already-done': [409, 'This stop of the walk is done already'],
  'gun-changed': [409, 'The grease gun is another than it was taken for'],
  'version-stale': [412, 'Somebody changed this record since you read it'],
  'body-too-large': [413, 'The request is too large'],
  'media-type-not-supported': [415, 'This kind of content is not taken here'],
  'date-in-future': [422, 'The date lies in the future'],
  'nothing-fitted': [422, 'Nothing is fitted at this position'],
  'removal-before-mounting': [422, 'A bearing cannot leave before it was fitted'],
  'reading-out-of-range': [422, 'A clearance reading is out of range'],
  'reading-unlikely': [422, 'A reading looks wrong: please look again'],
  'row-missing': [422, 'The second row of readings is missing'],
  'units-mixed': [422, 'Readings in different units'],
  'meter-backwards': [422, 'The meter would go backwards'],
  'hours-or-reason': [422, 'The hour reading is missing'],
  'reason-missing': [422, 'A reason is needed'],
  'grease-not-planned': [422, 'This is not the grease of the plan'],
  'overdose-not-confirmed': [422, 'More grease than the plan allows'],
  'part-does-not-fit': [422, 'A part does not fit'],
  'picture-unreadable': [422, 'The picture cannot be read'],
  'not-calculable': [422, 'This cannot be calculated with these numbers'],
  'not-allowed-here': [422, 'The entry does not fit the record'],
  'if-match-missing': [428, 'The version to change is missing'],
  'too-many-requests': [429, 'Too many tries'],
  'internal-error': [500, 'Something went wrong in the service'],
  'storage-not-ready': [503, 'Photos cannot be stored or read now'],
  'not-ready': [503, 'The service is not ready'],
} as const satisfies Record<string, readonly [number, string]>
export type ProblemCode = keyof typeof problemCodes
