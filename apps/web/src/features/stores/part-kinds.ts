import type { PartKind } from '@shaftbook/contract/register-tables'
import type { z } from 'zod'

/** The kinds of parts as stores people say them. */
export const partKindWords: Readonly<Record<z.output<typeof PartKind>, string>> = {
  bearing: 'bearing',
  sleeve: 'sleeve',
  nut: 'nut',
  washer: 'washer',
  clip: 'clip',
  ring: 'locating ring',
  seal: 'seal',
  cover: 'cover',
  grease: 'grease',
  bolts: 'bolts',
  consumable: 'consumable',
  other: 'other',
}
