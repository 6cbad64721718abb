import { clearanceClasses, type ClearanceClass } from '@shaftbook/standards/clearance-classes'
import type { Taper } from '@shaftbook/standards/table'
import { InputError } from './input-error.ts'

export interface Designation {
  /** Such as 22220 or 230/500. */
  basicCode: string
  /** The basic code without its bore code, such as 222. */
  series: string
  /** Such as 20, or 500 where the bore is written out. */
  boreCode: string
  boreMm: number
  /** 1:12 for K, 1:30 for K30, null for a cylindrical bore. */
  taper: Taper | null
  /** CN where nothing is printed. */
  clearanceClass: ClearanceClass
  /** Every other suffix: letters (design, cage) first, then the rest, as printed. */
  suffixes: string[]
}

const smallBoresMm: Readonly<Record<string, number>> = { '00': 10, '01': 12, '02': 15, '03': 17 }

/**
 * Parses a bearing designation as the trade writes it: 22220 K/C3, 23160-K-C4, 24040k30 c3, 230/500 K. Case, spaces and
 * the sign between suffixes don't matter. Throws InputError where it can't be read or contradicts itself.
 */
export function parseDesignation(text: string, field = 'designation'): Designation {
  const normal = text.trim().toUpperCase().replace(/\s+/g, ' ')
  const match = /^([A-Z]{0,4}) ?(\d{3,5})(?:\/(\d{3,4}))?(?!\d)(.*)$/.exec(normal)
  const [, prefix = '', digits = '', writtenBore, tail = ''] = match ?? []
  if (!match) throw new InputError('malformed', field, `"${text}" doesn't start with a basic code such as 22220.`)
  const bore = boreOf(prefix, digits, writtenBore, field)
  const tokens = tail.split(/[\s/\-+.,;_]+/).flatMap((token) => splitToken(token, bore.series))
  const taper = taperOf(tokens, bore.series, field)
  const clearanceClass = classOf(tokens, field)
  const rest = tokens.filter((token) => !/^K(30)?$/.test(token) && !isClass(token))
  const unreadable = rest.find((token) => !/^[A-Z0-9]+$/.test(token))
  if (unreadable) throw new InputError('malformed', field, `"${unreadable}" in "${text}" is not a suffix we can read.`)
  const isLetters = (token: string): boolean => /^[A-Z]+$/.test(token)
  const suffixes = [...rest.filter(isLetters), ...rest.filter((token) => !isLetters(token))]
  return { ...bore, taper, clearanceClass, suffixes }
}

/** Prints a designation in one form: basic code, design letters, K, class (CN is left out), other suffixes: 22220 K/C3. */
export function printDesignation(designation: Designation): string {
  const { basicCode, taper, clearanceClass, suffixes } = designation
  const letters = suffixes.filter((suffix) => /^[A-Z]+$/.test(suffix))
  const others = suffixes.filter((suffix) => !letters.includes(suffix))
  const bore = taper === null ? [] : [taper === '1:12' ? 'K' : 'K30']
  const first = [...letters, ...bore].join('-')
  const parts = [...(first ? [first] : []), ...(clearanceClass === 'CN' ? [] : [clearanceClass]), ...others]
  return parts.length === 0 ? basicCode : `${basicCode} ${parts.join('/')}`
}

/** Basic code with K or K30 as the tables of sleeves and housings list it: 22220K. */
export function codeWithBore({ basicCode, taper }: Pick<Designation, 'basicCode' | 'taper'>): string {
  if (taper === null) return basicCode
  return `${basicCode}${taper === '1:12' ? 'K' : 'K30'}`
}

/** Whether a series, such as 222 or 240, is one of spherical roller bearings (ISO 15 dimension series 02, 03, 22 to 41). */
export function isSphericalRoller(series: string): boolean {
  return /^2(1[1-3]|[234]\d)$/.test(series)
}

function boreOf(
  prefix: string,
  digits: string,
  writtenBore: string | undefined,
  field: string,
): Pick<Designation, 'basicCode' | 'series' | 'boreCode' | 'boreMm'> {
  if (writtenBore !== undefined) {
    const boreMm = Number(writtenBore)
    if (boreMm < 500 || boreMm > 2000) throw new InputError('too-small', field, boreSentence(writtenBore))
    const series = prefix + digits
    return { basicCode: `${series}/${writtenBore}`, series, boreCode: writtenBore, boreMm }
  }
  const miniature = prefix === '' && digits.length === 3
  const boreCode = digits.slice(miniature ? -1 : -2)
  const boreMm = miniature ? Number(boreCode) : (smallBoresMm[boreCode] ?? Number(boreCode) * 5)
  if (boreMm === 0 || boreMm > 480) throw new InputError('too-large', field, boreSentence(boreCode))
  return { basicCode: prefix + digits, series: prefix + digits.slice(0, -boreCode.length), boreCode, boreMm }
}

function boreSentence(boreCode: string): string {
  return `${boreCode} is not a bore code: 00 to 96, or the bore in mm behind a stroke from 500 up, as in 230/500.`
}

/**
 * Suffixes may stand glued: EK, KC3, C3W33. In the series of spherical roller bearings a K always means the
 * tapered bore, wherever it stands (KMB); in others only behind letters or alone.
 */
function splitToken(token: string, series: string): string[] {
  const cut = gluedClass.exec(token) ?? (isSphericalRoller(series) ? gluedK : endingK).exec(token)
  if (cut) return cut.slice(1).flatMap((part) => (part === token ? [part] : splitToken(part, series)))
  return token === '' ? [] : [token === 'C0' ? 'CN' : token]
}

const gluedClass = /^(.*?)(C[2-5](?!\d)|CN$)(.*)$/
const gluedK = /^(.*?)(K30|K(?!30))(.*)$/
const endingK = /^([A-Z]+)(K30|K)$/

function taperOf(tokens: string[], series: string, field: string): Taper | null {
  const written = tokens.find((token) => /^K(30)?$/.test(token))
  if (written === undefined) return null
  const steepSeries = /^24[01]$/.test(series)
  if (steepSeries && written === 'K') {
    throw new InputError(
      'conflict',
      field,
      `Series ${series} has a bore of 1:30: write K30, or nothing for a cylindrical bore.`,
    )
  }
  return written === 'K' ? '1:12' : '1:30'
}

function classOf(tokens: string[], field: string): ClearanceClass {
  const classes = tokens.filter(isClass)
  if (new Set(classes).size > 1) {
    throw new InputError('conflict', field, `Only one clearance class can apply, not ${classes.join(' and ')}.`)
  }
  return classes[0] ?? 'CN'
}

function isClass(token: string): token is ClearanceClass {
  return clearanceClasses.some((name) => name === token)
}
