import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

export interface RingFrequencies extends Sourced {
  outerRingHz: number
  innerRingHz: number
  cageHz: number
  rollerSpinHz: number
  /** Twice the spin: a spot on a roller meets both rings in one turn. */
  rollerPassHz: number
}

export interface RingGeometryInput {
  /** Rolling elements in one row. */
  elements: number
  elementDiameterMm: number
  pitchDiameterMm: number
  contactAngleDeg: number
  speedRpm: number
}

/**
 * Passing frequencies in Hz of a bearing whose inner ring turns, from its inner geometry: for whoever reads a vibration
 * spectrum. Slip makes real ones 1 to 2 % lower.
 */
export function ringFrequencies(input: RingGeometryInput): RingFrequencies {
  const { elements, elementDiameterMm, pitchDiameterMm, contactAngleDeg, speedRpm } = input
  requireWithin(elements, 'elements', 3, 200, '')
  if (!Number.isInteger(elements))
    throw new InputError('not-a-number', 'elements', 'The number of rollers is a whole one.')
  requireWithin(speedRpm, 'speedRpm', 0.1, 50_000, 'rev/min')
  requireWithin(contactAngleDeg, 'contactAngleDeg', 0, 60, '°')
  requireWithin(pitchDiameterMm, 'pitchDiameterMm', 3, 3000, 'mm')
  requireWithin(elementDiameterMm, 'elementDiameterMm', 0.5, pitchDiameterMm / 2, 'mm')
  const turns = speedRpm / 60
  const slope = (elementDiameterMm / pitchDiameterMm) * Math.cos((contactAngleDeg * Math.PI) / 180)
  const rollerSpinHz = ((pitchDiameterMm * turns) / (2 * elementDiameterMm)) * (1 - slope * slope)
  return {
    outerRingHz: (elements / 2) * turns * (1 - slope),
    innerRingHz: (elements / 2) * turns * (1 + slope),
    cageHz: (turns / 2) * (1 - slope),
    rollerSpinHz,
    rollerPassHz: 2 * rollerSpinHz,
    source: formula('rolling without slip'),
    rule: 'kinematics',
    cautions: ['Real frequencies lie 1 to 2 % lower, by slip.'],
  }
}
