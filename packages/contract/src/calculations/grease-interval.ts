import { greaseInterval, intervalLevels } from '@shaftbook/bearing/grease-interval'
import { InputError } from '@shaftbook/bearing/input-error'
import { calculation } from './calculation.ts'
import { choice, optional, quantity, yesNo } from './field.ts'
import { figure, maybe, rows, saying, whether } from './figure.ts'

type Labels<Levels> = { [Name in keyof Levels]: string }

function labels<const Levels extends Readonly<Record<string, { label: string }>>>(levels: Levels): Labels<Levels> {
  return Object.fromEntries(Object.entries(levels).map(([name, { label }]) => [name, label])) as Labels<Levels>
}

const interval = calculation({
  name: 'grease-interval',
  group: 'grease',
  title: 'Greasing interval',
  words:
    'K · (14 000 000 / (n · √d) − 4 · d) run hours, K the product of every factor; at most 8760 h. The two temperature methods are never mixed.',
  input: {
    speedRpm: quantity('Speed n', 'rev/min', 1, 20_000),
    boreMm: quantity('Bore d', 'mm', 10, 1500),
    bearing: choice('Bearing', labels(intervalLevels.bearing)),
    temperature: choice('Temperature', labels(intervalLevels.temperature)),
    dirt: choice('Dirt', labels(intervalLevels.dirt)),
    moisture: choice('Moisture', labels(intervalLevels.moisture)),
    vibration: choice('Vibration', labels(intervalLevels.vibration)),
    shaft: choice('Shaft', labels(intervalLevels.shaft)),
    loadOverRating: optional(quantity('Load P over rating C', '', 0, 1)),
    outerRingTurns: optional(yesNo('The outer ring turns, or the load swings')),
    method: optional(
      choice('Temperature counts by', {
        factors: 'the factor of its step',
        halving: 'halving for each 15 K above 70 °C',
      }),
    ),
    outerRingC: optional(quantity('Outer ring', '°C', -40, 150, 'For halving')),
    capLifted: optional(yesNo('The engineer lifts the limit of 8760 h')),
  },
  result: {
    intervalHours: maybe(figure('Interval', 'h')),
    baseHours: maybe(figure('Before the factors', 'h', 4)),
    product: figure('K', ''),
    factors: rows('Factors', { name: saying('For'), label: saying('Level'), factor: figure('Factor', '') }),
    capped: maybe(whether('Held at 8760 h')),
  },
  run: ({ speedRpm, boreMm, loadOverRating, outerRingTurns, method, outerRingC, capLifted, ...levels }) => {
    if (method === 'halving' && typeof outerRingC !== 'number')
      throw new InputError('conflict', 'outerRingC', 'Halving needs the temperature of the outer ring.')
    return greaseInterval({
      speedRpm,
      boreMm,
      levels,
      loadOverRating: loadOverRating ?? null,
      outerRingTurns: outerRingTurns ?? false,
      capLifted: capLifted ?? false,
      method:
        method === 'halving' && typeof outerRingC === 'number' ? { kind: 'halving', outerRingC } : { kind: 'factors' },
    })
  },
})

export const intervalCalculations = [interval]
