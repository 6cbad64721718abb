import type { Ask } from './sheet-asks.ts'
import type { Sheet } from './sheet.ts'
import type { SheetScope, StepKey } from './sheet-steps.ts'

export type StepState = 'nothing' | 'begun' | 'told' | 'asks'

export const stepWords: Record<StepState, string> = {
  nothing: 'nothing yet',
  begun: 'begun',
  told: 'told',
  asks: 'asks something',
}

/** How far each step is told; a step with an open question says so before all else. */
export function stepStates(
  scope: SheetScope,
  asks: readonly Ask[],
  sheet: Sheet,
  asking: ReadonlySet<StepKey>,
): Record<StepKey, StepState> {
  const states = scope.steps.map((step): [StepKey, StepState] => {
    if (asking.has(step)) return [step, 'asks']
    const told = asks
      .filter((ask) => ask.step === step)
      .map((ask) => (sheet.blanks[ask.key] === undefined ? ask.told(sheet) : 'all'))
    if (told.length > 0 && told.every((each) => each === 'all')) return [step, 'told']
    return [step, told.some((each) => each !== 'nothing') ? 'begun' : 'nothing']
  })
  return Object.fromEntries(states) as Record<StepKey, StepState>
}

/** The first of some steps in the order of the work. */
export function firstStepOf(steps: readonly StepKey[], scope: SheetScope): StepKey | undefined {
  return scope.steps.find((step) => steps.includes(step))
}

/** The step on which the field with this key stands. */
export function stepOfKey(key: string, scope: SheetScope): StepKey {
  const [field = ''] = key.split('.')
  const step = stepOfField[field] ?? 'sign'
  return scope.steps.includes(step) ? step : 'sign'
}

const fieldsOfStep: Partial<Record<StepKey, string>> = {
  safe: 'reason permitReference cautionsSeenBy meterShowsHours noHoursReason correctionReason',
  strip:
    'endKind modeClause cause detection evidence observer found foundRingCount foundNutSide foundSeals foundGrease foundNote',
  seat: 'shaft shaftSystem shaftSurface shaftDecision shaftDiameterMm housing housingSeatWidthMm softFootMm housingDecision seatNote',
  kit: 'kitCheck sleeveCode nutCode lockingCode',
  bench: 'bearingTypeId serial lot maker packedOn gauge temperatureC method bench bearing',
  drive: 'byFeelPerson zeroPointMethod driveUpMm nutAngleDeg mounted driveSteps',
  lock: 'lockForwardDeg lockedWith lockNote',
  rings: 'ringCount ringWidthMm ringsPlaced sealsFitted sealsTurn',
  grease: 'greaseId greaseBearingG greaseHousingG',
  cap: 'boltSize boltClass boltFriction boltTargetNm boltStepsDone marksMatch capBoltTorqueNm',
  turn: 'turnsFree',
  start: 'startedAt startReadings twinTemperatureC zone lockChecked startLaterReason startNote',
}

const stepOfField: Record<string, StepKey> = Object.fromEntries(
  Object.entries(fieldsOfStep).flatMap(([step, fields]) => fields.split(' ').map((field) => [field, step as StepKey])),
)
