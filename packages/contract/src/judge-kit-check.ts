import { parseDesignation, type Designation } from '@shaftbook/bearing/designation'
import { InputError } from '@shaftbook/bearing/input-error'
import { mayReplace } from '@shaftbook/bearing/interchange'
import { checkKitPair, type KitFinding } from '@shaftbook/bearing/kit-pair'
import { parsePartCode } from '@shaftbook/bearing/part-code'
import { sleeveByCode } from '@shaftbook/standards/adapter-sleeves'
import type { z } from 'zod'
import type { KitCheckLine } from './mount-details.ts'
import type { bearingTypes, positions } from './register-tables.ts'

/** What the register says of a bearing type that a kit hangs on. */
export type KitBearing = Pick<
  z.output<typeof bearingTypes.Row>,
  'designation' | 'basicCode' | 'series' | 'boreMm' | 'taper' | 'clearanceClass'
>

export interface KitCheckPlace {
  readonly position: Pick<z.output<typeof positions.Row>, 'tag' | 'seat' | 'locating' | 'shaftDiameterMm'>
  /** As read from the thread at this mount, else as the register says. R-INCH. */
  readonly shaftSystem: 'metric' | 'inch'
  /** The type that the position takes. */
  readonly planned: KitBearing
  /** The type that the sheet says goes on. */
  readonly bearing: KitBearing
}

/** asked: goes on with a reason; refused: never goes together. */
export type KitAnswer =
  { readonly verdict: 'ok' } | { readonly verdict: 'asked' | 'refused'; readonly sentence: string }

/**
 * Judges what lies on the bench, line by line and in their order: what must never go together is refused, another part than
 * planned or a missing one is asked about. A line that is as the kit plans it is refused or fits, since whoever keeps the kit
 * was asked. R-KIT-PAIR, R-RING, R-INCH.
 */
export function judgeKitCheck(lines: readonly KitCheckLine[], place: KitCheckPlace): KitAnswer[] {
  const parts = { sleeve: firstCode(lines, ['sleeve']), nut: firstCode(lines, ['nut']) }
  return lines.map((line) => answerOf(line, findingsOf(line, parts, place)))
}

/** The code of the part that was taken; null where none was, or where it has no code. */
export function takenCode({ found, plannedCode, foundCode }: KitCheckLine): string | null {
  const code = found === 'as-planned' ? plannedCode : found === 'other' ? foundCode : ''
  return code === '' ? null : code
}

interface Pair {
  readonly sleeve: string | null
  readonly nut: string | null
}

function firstCode(lines: readonly KitCheckLine[], kinds: readonly KitCheckLine['kind'][]): string | null {
  const line = lines.find((candidate) => kinds.includes(candidate.kind) && takenCode(candidate) !== null)
  return line ? takenCode(line) : null
}

function answerOf(line: KitCheckLine, findings: readonly KitFinding[]): KitAnswer {
  const refused = findings.filter(({ kind }) => kind === 'refused')
  if (refused.length > 0) return { verdict: 'refused', sentence: sentencesOf(refused) }
  if (line.found === 'as-planned' || line.found === 'not-needed') return { verdict: 'ok' }
  return { verdict: 'asked', sentence: sentencesOf([askedOf(line), ...findings]) }
}

function askedOf({ found, kind, plannedCode, foundCode }: KitCheckLine): KitFinding {
  const planned = plannedCode === '' ? `the ${kind}` : plannedCode
  if (found === 'missing') return ask(`${capital(planned)} is missing: say why the mount goes on without it.`)
  if (plannedCode === '') return ask(`${foundCode} is not in the kit: say why it was taken.`)
  return ask(`${foundCode} was taken, the kit plans ${plannedCode}: say why.`)
}

function findingsOf(line: KitCheckLine, pair: Pair, place: KitCheckPlace): KitFinding[] {
  if (line.found === 'missing' || line.found === 'not-needed') return []
  const code = takenCode(line)
  if (code === null) return line.found === 'other' ? [refuse(`Enter the code of the ${line.kind} that was taken.`)] : []
  switch (line.kind) {
    case 'bearing':
      return bearingFindings(code, place)
    case 'sleeve':
      return sleeveFindings(code, place)
    case 'nut':
      return nutFindings(code, pair, place)
    case 'washer':
    case 'clip':
      return lockingFindings(code, pair, place)
    case 'ring':
      return place.position.locating || line.quantity === 0
        ? []
        : [refuse(`${place.position.tag} does not locate the shaft: no ring goes in.`)]
    default:
      return []
  }
}

function bearingFindings(code: string, { planned, bearing }: KitCheckPlace): KitFinding[] {
  const offered = readDesignation(code)
  if (!offered) return [ask(`${code} cannot be read as a bearing: compare it with ${bearing.designation}.`)]
  const same =
    offered.basicCode === bearing.basicCode &&
    offered.taper === bearing.taper &&
    offered.clearanceClass === bearing.clearanceClass
  const mixedUp = same ? [] : [refuse(`The sheet says that ${bearing.designation} goes on, on the bench lies ${code}.`)]
  const { verdict, reasons } = mayReplace(designationOf(planned), offered)
  if (verdict === 'allowed') return mixedUp
  return [...mixedUp, ...reasons.map((reason) => (verdict === 'never' ? refuse(reason) : ask(reason)))]
}

function sleeveFindings(code: string, { position, shaftSystem, bearing }: KitCheckPlace): KitFinding[] {
  if (position.seat === 'withdrawal-sleeve')
    return [ask('No table has a row for withdrawal sleeves: compare the code.')]
  if (position.seat !== 'adapter-sleeve') return [refuse(`${position.tag} has no sleeve seat: no sleeve goes on.`)]
  return [
    ...checkKitPair({ bearing: designationOf(bearing), sleeveCode: code }).findings,
    ...shaftFindings(code, shaftSystem, position.shaftDiameterMm),
  ]
}

/** How far, in mm, a shaft may be from the one that its sleeve is made for and still be it. */
const reachMm = 0.5

function shaftFindings(code: string, shaftSystem: 'metric' | 'inch', shaftMm: number | null): KitFinding[] {
  const lookup = sleeveByCode(plain(code))
  if (!lookup.found) return []
  const { sleeveCode, shaftMm: madeForMm } = lookup.row
  if (shaftSystem === 'inch') {
    return [refuse(`${sleeveCode} is metric, the shaft is an inch one: inch and metric never go together.`)]
  }
  if (shaftMm === null || Math.abs(shaftMm - madeForMm) <= reachMm) return []
  return [refuse(`${sleeveCode} is made for a shaft of ${madeForMm} mm, this one has ${shaftMm} mm.`)]
}

function nutFindings(code: string, { sleeve }: Pair, { bearing }: KitCheckPlace): KitFinding[] {
  if (sleeve === null) return []
  const bare = { bearing: designationOf(bearing), sleeveCode: sleeve }
  return [...systemFindings(code, sleeve), ...added(checkKitPair({ ...bare, nutCode: code }), checkKitPair(bare))]
}

function lockingFindings(code: string, { sleeve, nut }: Pair, { bearing }: KitCheckPlace): KitFinding[] {
  const mixed = systemFindings(code, nut)
  if (sleeve === null) return mixed
  const bare = { bearing: designationOf(bearing), sleeveCode: sleeve, nutCode: nut }
  return [...mixed, ...added(checkKitPair({ ...bare, lockingCode: code }), checkKitPair(bare))]
}

/** What a further part brings up. */
function added(whole: { findings: KitFinding[] }, before: { findings: KitFinding[] }): KitFinding[] {
  const known = new Set(before.findings.map(({ sentence }) => sentence))
  return whole.findings.filter(({ sentence }) => !known.has(sentence))
}

function systemFindings(code: string, other: string | null): KitFinding[] {
  const [system, otherSystem] = [systemOf(code), other === null ? null : systemOf(other)]
  if (system === null || otherSystem === null || system === otherSystem) return []
  return [refuse(`${code} is ${named[system]}, ${other} ${named[otherSystem]}: inch and metric never go together.`)]
}

const named = { metric: 'metric', inch: 'an inch part' } as const

function systemOf(code: string): 'metric' | 'inch' | null {
  return readOrNull(() => parsePartCode(code).system)
}

function readDesignation(code: string): Designation | null {
  return readOrNull(() => parseDesignation(code))
}

/** What the register says, with the suffixes that its designation prints. */
function designationOf({ designation, basicCode, series, boreMm, taper, clearanceClass }: KitBearing): Designation {
  const suffixes = readDesignation(designation)?.suffixes ?? []
  return { basicCode, series, boreCode: basicCode.slice(series.length), boreMm, taper, clearanceClass, suffixes }
}

/** null where the text is none of the trade's codes. */
function readOrNull<T>(read: () => T): T | null {
  try {
    return read()
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}

function plain(code: string): string {
  return code.trim().toUpperCase().replace(/\s+/g, '')
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function sentencesOf(findings: readonly KitFinding[]): string {
  return [...new Set(findings.map(({ sentence }) => sentence))].join(' ')
}

function refuse(sentence: string): KitFinding {
  return { kind: 'refused', sentence }
}

function ask(sentence: string): KitFinding {
  return { kind: 'ask', sentence }
}
