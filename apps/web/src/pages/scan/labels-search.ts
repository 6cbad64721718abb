import { z } from 'zod'

const millimetres = z.coerce.number().min(0).max(300).optional().catch(undefined)
const count = z.coerce.number().int().min(1).max(144).optional().catch(undefined)
const typed = z.union([z.string().max(200), z.number().transform(String)])

/** What the address of the labels says. A part that is not understood counts as not given. */
export const labelsSearch = z.object({
  q: typed.optional().catch(undefined),
  area: z.uuid().optional().catch(undefined),
  machine: z.uuid().optional().catch(undefined),
  position: z.uuid().optional().catch(undefined),
  paper: z.enum(['roll', 'a4']).optional().catch(undefined),
  width: millimetres,
  height: millimetres,
  columns: count,
  rows: count,
  left: millimetres,
  top: millimetres,
  columnGap: millimetres,
  rowGap: millimetres,
  start: count,
})
export type LabelsSearch = z.output<typeof labelsSearch>
