import { z } from 'zod'

/** Every field optional, and none filled in by a default: what a change leaves out stays as it is. */
export function changeOf<B extends z.ZodRawShape>(fields: z.ZodObject<B>) {
  const shape = Object.fromEntries(
    Object.entries(fields.shape).map(([name, field]) => [
      name,
      z.optional(field instanceof z.ZodDefault ? field.unwrap() : field),
    ]),
  )
  return z.strictObject(shape) as unknown as ReturnType<z.ZodObject<B>['partial']>
}
