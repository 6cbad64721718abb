import { sleeveByCode, sleeveForSrb, srbCodesOf } from '@shaftbook/standards/adapter-sleeves'
import type { AdapterSleeveRow } from '@shaftbook/standards/adapter-sleeves.data'
import { nutByCode } from '@shaftbook/standards/lock-nuts'
import { codeWithBore, type Designation } from './designation.ts'
import { certaintyCautions, formula, noAnswer, standardRow, type NoAnswer, type Sourced } from './source.ts'

export interface KitFinding {
  kind: 'refused' | 'ask'
  sentence: string
}

export interface KitPairCheck extends Sourced {
  verdict: 'fits' | 'refused' | 'ask'
  findings: KitFinding[]
}

export interface KitPair {
  bearing: Designation
  sleeveCode: string
  nutCode?: string | null
  /** Code of the tab washer or clip. */
  lockingCode?: string | null
}

/**
 * Whether bearing, adapter sleeve, nut and washer or clip belong together: same bore, same taper, the sleeve's series lists
 * the bearing, one thread. Every refusal or question with its reason. R-KIT-PAIR.
 */
export function checkKitPair(pair: KitPair): KitPairCheck {
  const lookup = sleeveByCode(code(pair.sleeveCode))
  if (!lookup.found) {
    const source = formula('no row in the table of sleeves')
    return outcome([ask(`${lookup.reason} Compare with the maker's list.`)], source, [])
  }
  const source = standardRow(lookup, lookup.row.sleeveCode)
  const findings = [...bearingFindings(pair.bearing, lookup.row), ...threadFindings(pair, lookup.row)]
  return outcome(findings, source, certaintyCautions(source))
}

export type SleeveChoice =
  | (Sourced & {
      found: true
      sleeveCode: string
      nutCode: string
      lockingCode: string
      lockingType: string
      shaftMm: number
    })
  | NoAnswer

const sleeveTable = 'ISO 2982-1 / DIN 5415, adapter sleeves'

/** The adapter sleeve with its nut and washer or clip for a spherical roller bearing, from the table. R-KIT-PAIR. */
export function sleeveFor(bearing: Designation): SleeveChoice {
  if (bearing.taper === null) {
    const reason = `${bearing.basicCode} has a cylindrical bore: it takes no adapter sleeve.`
    return noAnswer(reason, sleeveTable, 'R-KIT-PAIR')
  }
  const lookup = sleeveForSrb(codeWithBore(bearing))
  if (!lookup.found) return noAnswer(lookup.reason, sleeveTable, 'R-KIT-PAIR')
  const { sleeveCode, nutCode, lockingCode, lockingType, shaftMm, note } = lookup.row
  const source = standardRow(lookup, sleeveCode)
  const cautions = [...certaintyCautions(source), ...(note ? [`${sleeveCode}: ${note}.`] : [])]
  return { found: true, sleeveCode, nutCode, lockingCode, lockingType, shaftMm, source, rule: 'R-KIT-PAIR', cautions }
}

function bearingFindings(bearing: Designation, sleeve: AdapterSleeveRow): KitFinding[] {
  const name = codeWithBore(bearing)
  if (bearing.taper === null) return [refuse(`${name} has a cylindrical bore: it does not go on a sleeve.`)]
  if (bearing.taper !== sleeve.taper) {
    return [refuse(`${name} has a taper of ${bearing.taper}, ${sleeve.sleeveCode} one of ${sleeve.taper}.`)]
  }
  if (bearing.boreMm !== sleeve.bearingBoreMm) {
    const bores = `${sleeve.sleeveCode} takes bores of ${sleeve.bearingBoreMm} mm, ${name} has ${bearing.boreMm} mm`
    return [refuse(`${bores}.`)]
  }
  if (srbCodesOf(sleeve).includes(name)) return []
  const right = sleeveForSrb(name)
  if (right.found) return [refuse(`${sleeve.sleeveCode} is not made for ${name}: it takes ${right.row.sleeveCode}.`)]
  return [ask(`The table doesn't say whether ${sleeve.sleeveCode} fits ${name}: compare the sleeve's length.`)]
}

function threadFindings(pair: KitPair, sleeve: AdapterSleeveRow): KitFinding[] {
  const nutCode = pair.nutCode ? code(pair.nutCode) : null
  const lockingCode = pair.lockingCode ? code(pair.lockingCode) : null
  const nut = nutByCode(nutCode ?? sleeve.nutCode)
  const findings: KitFinding[] = []
  if (nutCode !== null && nutCode !== sleeve.nutCode) findings.push(nutFinding(nutCode, nut, sleeve))
  const belongs = [
    sleeve.nutCode === nutCode || nutCode === null ? sleeve.lockingCode : null,
    nut.found ? nut.row.lockingCode : null,
  ]
  if (lockingCode !== null && !belongs.includes(lockingCode)) {
    const right = belongs.find((known) => known !== null)
    const nutName = nutCode ?? sleeve.nutCode
    findings.push(
      right
        ? refuse(`${lockingCode} does not belong to nut ${nutName}: that one takes ${right}.`)
        : ask(`The table doesn't say what locks nut ${nutName}: check that ${lockingCode} does.`),
    )
  }
  return findings
}

function nutFinding(nutCode: string, nut: ReturnType<typeof nutByCode>, sleeve: AdapterSleeveRow): KitFinding {
  if (!nut.found) return ask(`${nut.reason} ${sleeve.sleeveCode} has ${sleeve.thread}.`)
  const { thread, threadsPerInch } = nut.row
  if (threadsPerInch !== null)
    return refuse(`${nutCode} has an inch thread (${thread}), ${sleeve.sleeveCode} ${sleeve.thread}.`)
  if (thread !== sleeve.thread)
    return refuse(`${nutCode} has the thread ${thread}, ${sleeve.sleeveCode} ${sleeve.thread}.`)
  return ask(`${nutCode} has the sleeve's thread but ${sleeve.nutCode} is the usual nut: check height and locking.`)
}

function outcome(findings: KitFinding[], source: Sourced['source'], cautions: string[]): KitPairCheck {
  const refused = findings.some((finding) => finding.kind === 'refused')
  const verdict = refused ? 'refused' : findings.length > 0 ? 'ask' : 'fits'
  return { verdict, findings, source, rule: 'R-KIT-PAIR', cautions }
}

function code(text: string): string {
  return text.trim().toUpperCase().replace(/\s+/g, '')
}

function refuse(sentence: string): KitFinding {
  return { kind: 'refused', sentence }
}

function ask(sentence: string): KitFinding {
  return { kind: 'ask', sentence }
}
