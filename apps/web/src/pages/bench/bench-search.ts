import { z } from 'zod'

/** What is typed may be all digits; an address then holds a number. */
const typed = z.union([z.string().max(100), z.number().transform(String)])

export const contentsSearch = z.object({ q: typed.optional().catch(undefined) })
export type ContentsSearch = z.output<typeof contentsSearch>

/** The numbers of a calculation; what is no plain value counts as not given. */
export const calculationSearch = z
  .record(z.string(), z.unknown())
  .transform((search) =>
    Object.fromEntries(Object.entries(search).filter(([, value]) => plain.safeParse(value).success)),
  )
  .pipe(z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])))
const plain = z.union([z.string().max(500), z.number(), z.boolean()])
