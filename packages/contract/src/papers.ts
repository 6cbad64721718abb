import { z } from 'zod'
import { Id, Text, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** More labels than these are printed in several goes. */
export const mostLabels = 500
/** Smaller than this a label does not hold a QR code that can be read beside its words. */
export const smallestLabelMm = { width: 25, height: 15 } as const

const pdf = ['application/pdf'] as const

export const printMount = endpoint({
  name: 'print-mount-record',
  method: 'GET',
  path: sitePath('mount-records/:id/paper'),
  access: everyone,
  summary: 'The mount record as PDF on A4; a draft says so on every page',
  params: recordParams,
  gives: pdf,
  replies: { 200: null },
})

export const printBlankSheet = endpoint({
  name: 'print-blank-sheet',
  method: 'GET',
  path: sitePath('positions/:id/blank-sheet'),
  access: everyone,
  summary: "A mount sheet with the position's own numbers to fill in by hand, as PDF on A4",
  params: recordParams,
  gives: pdf,
  replies: { 200: null },
})

const millimetres = (least: number, most: number) => z.coerce.number().min(least).max(most)

/** Which paper the labels go on: one label a page on a roll, or A4 in columns and rows. */
export const LabelPaper = z.object({
  paper: z.enum(['roll', 'a4']).default('roll'),
  widthMm: millimetres(smallestLabelMm.width, 210).default(62).meta({ description: 'Of a label on a roll' }),
  heightMm: millimetres(smallestLabelMm.height, 297).default(29).meta({ description: 'Of a label on a roll' }),
  columns: z.coerce.number().int().min(1).max(8).default(3),
  rows: z.coerce.number().int().min(1).max(18).default(8),
  leftMm: millimetres(0, 50).default(8).meta({ description: 'Margin left and right of the sheet' }),
  topMm: millimetres(0, 50).default(12).meta({ description: 'Margin above and below on the sheet' }),
  columnGapMm: millimetres(0, 30).default(3),
  rowGapMm: millimetres(0, 30).default(0),
  startAt: z.coerce.number().int().min(1).max(144).default(1).meta({
    description: 'The first free label of the first sheet, counted row by row',
  }),
})
export type LabelPaper = z.output<typeof LabelPaper>

export const printPositionLabels = endpoint({
  name: 'print-position-labels',
  method: 'GET',
  path: sitePath('position-labels'),
  access: everyone,
  summary: `QR labels of positions as PDF, by tag, ${mostLabels} at most; retired positions get none`,
  params: siteParams,
  query: z.object({
    ...LabelPaper.shape,
    ids: z
      .string()
      .transform((text) => text.split(','))
      .pipe(z.array(Id).max(100))
      .optional()
      .meta({ description: 'Ids of positions with commas between them, 100 at most' }),
    areaId: Id.optional(),
    machineId: Id.optional(),
    search: Text.optional().meta({ description: 'As on the position board' }),
  }),
  gives: pdf,
  replies: { 200: null },
})
