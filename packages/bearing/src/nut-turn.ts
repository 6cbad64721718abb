import { nutByCode } from '@shaftbook/standards/lock-nuts'
import { washerByCode } from '@shaftbook/standards/lock-washers'
import type { Taper } from '@shaftbook/standards/table'
import { lockStep, nutAngleDeg, taperLength, travelFromAngleMm, type LockStep } from './drive-up.ts'
import { InputError, requireWithin } from './input-error.ts'
import {
  certaintyCautions,
  formula,
  noAnswer,
  standardRow,
  type NoAnswer,
  type Source,
  type Sourced,
} from './source.ts'
import { toUm } from './units.ts'

/** A nut by its code in the tables, or by the pitch read from the part. */
export interface NutChoice {
  nutCode?: string | null
  pitchMm?: number | null
}

export interface NutTurn extends Sourced {
  found: true
  travelMm: number
  angleDeg: number
  turns: number
  pitchMm: number
  /** Growth of the taper's diameter by that travel, before smoothing. */
  wedgeUm: number
}

/** Nut angle for an axial travel in mm (0 to 50) on a nut of the tables, or of a pitch in mm: 360 · s / P. */
export function turnForTravel(travelMm: number, nut: NutChoice, taper: Taper): NutTurn | NoAnswer {
  requireWithin(travelMm, 'travelMm', 0, 50, 'mm')
  const pitch = pitchOf(nut)
  if (!pitch.found) return pitch
  return nutTurn(travelMm, nutAngleDeg(travelMm, pitch.pitchMm), pitch, taper)
}

/** Axial travel for a nut angle in degrees (0 to 3600): the inverse of turnForTravel. */
export function travelForTurn(angleDeg: number, nut: NutChoice, taper: Taper): NutTurn | NoAnswer {
  requireWithin(angleDeg, 'angleDeg', 0, 3600, '°')
  const pitch = pitchOf(nut)
  if (!pitch.found) return pitch
  return nutTurn(travelFromAngleMm(angleDeg, pitch.pitchMm), angleDeg, pitch, taper)
}

/**
 * Lock step of a nut of the tables with its washer; the tabs as counted on the washer in the hand, else those of the table,
 * which are of low certainty. Nuts that lock by a clip have no tabs. R-TAB.
 */
export function lockStepOfNut(
  nutCode: string,
  tabsCounted: number | null,
  taper: Taper,
): ({ found: true; tabs: number; slots: number } & LockStep) | NoAnswer {
  const nut = nutByCode(codeOf(nutCode))
  if (!nut.found) return noAnswer(nut.reason, nutTable, 'R-TAB')
  const { slots, pitchMm, lockingCode } = nut.row
  const washer = tabsCounted === null && lockingCode !== null ? washerByCode(lockingCode) : null
  const tabs = tabsCounted ?? (washer?.found ? washer.row.outerTabs : null)
  if (tabs === null) {
    const reason = `The table has no washer with tabs for ${codeOf(nutCode)}: count the tabs, or it locks by a clip.`
    return noAnswer(reason, 'DIN 5406, lock washers', 'R-TAB')
  }
  const step = lockStep({ slots, tabs, pitchMm, taper })
  const counted = washer?.found ? [`${tabs} tabs is a count of low certainty for ${washer.row.washerCode}.`] : []
  return { found: true, ...step, tabs, slots, cautions: [...counted, ...step.cautions] }
}

const nutTable = 'DIN 981 / ISO 2982-2, lock nuts'

interface Pitch extends Sourced {
  found: true
  pitchMm: number
}

function pitchOf({ nutCode, pitchMm }: NutChoice): Pitch | NoAnswer {
  const code = codeOf(nutCode ?? '')
  if (code === '') {
    if (pitchMm === null || pitchMm === undefined)
      throw new InputError('conflict', 'nutCode', 'Give the nut’s code, or its pitch in mm.')
    requireWithin(pitchMm, 'pitchMm', 0.2, 20, 'mm')
    return { found: true, pitchMm, source: formula('pitch read from the part'), rule: 'R-RATIO', cautions: [] }
  }
  const nut = nutByCode(code)
  if (!nut.found) return noAnswer(nut.reason, nutTable, 'R-RATIO')
  const source: Source = standardRow(nut, `${code}, ${nut.row.thread}`)
  return { found: true, pitchMm: nut.row.pitchMm, source, rule: 'R-RATIO', cautions: certaintyCautions(source) }
}

function nutTurn(travelMm: number, angleDeg: number, pitch: Pitch, taper: Taper): NutTurn {
  const zero =
    'Only from a zero point found by resistance; the measured reduction decides, the angle is the cross-check.'
  return {
    found: true,
    travelMm,
    angleDeg,
    turns: angleDeg / 360,
    pitchMm: pitch.pitchMm,
    wedgeUm: toUm((travelMm * 1000) / taperLength[taper], 'um'),
    source: pitch.source,
    rule: pitch.rule,
    cautions: [...pitch.cautions, zero],
  }
}

function codeOf(text: string): string {
  return text.trim().toUpperCase().replace(/\s+/g, '')
}
