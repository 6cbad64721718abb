import { InputError } from './input-error.ts'

export const partKinds = ['sleeve', 'nut', 'washer', 'clip', 'housing'] as const
export type PartKind = (typeof partKinds)[number]

export interface PartCode {
  kind: PartKind
  /** Upper case without spaces, as the tables list it. */
  code: string
  /** Inch parts never go with metric ones. */
  system: 'metric' | 'inch'
}

/** Codes of the trade by kind, most particular first: H320, KM20, KML26, HM44T, HM3044, AN20, MB20, MS3052-48, W20, SN520. */
const patterns: readonly [PartKind, 'metric' | 'inch', RegExp][] = [
  ['sleeve', 'metric', /^H\d{3,4}$/],
  ['nut', 'metric', /^(KM|KML)\d{1,3}$/],
  ['nut', 'metric', /^HM\d{2,4}T?$/],
  ['nut', 'inch', /^A?N\d{2,3}$/],
  ['washer', 'metric', /^(MB|MBL)\d{1,3}$/],
  ['washer', 'inch', /^W\d{2,3}$/],
  ['clip', 'metric', /^MS\d{2,4}(\/\d{3,4})?(-\d{2,3})?$/],
  ['housing', 'metric', /^SN[2356]\d{2}$/],
]

/**
 * Reads the code of a sleeve, nut, washer, clip or housing as the trade writes it, in any case and spacing. Throws
 * InputError where it is none of them.
 */
export function parsePartCode(text: string, field = 'code'): PartCode {
  const code = text.trim().toUpperCase().replace(/\s+/g, '').replace(/–/g, '-')
  const match = patterns.find(([, , pattern]) => pattern.test(code))
  if (!match) {
    throw new InputError(
      'malformed',
      field,
      `"${text}" is not a code of a sleeve, nut, washer, clip or housing that we know.`,
    )
  }
  return { kind: match[0], code, system: match[1] }
}
