import { chooseBand, residualMinimum, type BandQuery } from '@shaftbook/bearing/band'
import { driveUpGuidance, type DriveUpGuided } from '@shaftbook/bearing/drive-up-guidance'
import type { DriveUpStep } from '@shaftbook/bearing/drive-up-steps'
import { stacksOf } from '@shaftbook/bearing/feeler-blades'
import { InputError } from '@shaftbook/bearing/input-error'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, optional, quantities, quantity, yesNo } from './field.ts'
import { figure, figures, maybe, rows, word } from './figure.ts'

const own = 'The position’s own; left empty, the guide’s is taken'
const inOrder = 'One for each step, in the order taken'

const guidance = calculation({
  name: 'drive-up-guidance',
  group: 'drive-up',
  title: 'Guidance of a drive-up',
  words:
    'From bench clearance, steps so far and band: one advice, the reduction still to go, the travel and nut angle expected for it, and the stacks to try.',
  input: {
    boreMm: field.boreMm,
    taper: optional(field.taper),
    clearanceClass: field.clearanceClass,
    benchRowAUm: field.rowReadings('On the bench, row A'),
    benchRowBUm: field.rowReadings('On the bench, row B'),
    stepsRowAUm: optional(quantities('Steps so far, row A', 'µm', 0, 2000, 40, inOrder)),
    stepsRowBUm: optional(quantities('Steps so far, row B', 'µm', 0, 2000, 40, inOrder)),
    stepsTravelMm: optional(quantities('Steps so far, travel from the zero point', 'mm', 0, 50, 40, inOrder)),
    zeroFound: optional(yesNo('The zero point was found by resistance')),
    pitchMm: optional(quantity('Pitch of the nut’s thread', 'mm', 0.2, 20, 'Tells the nut angle')),
    bladesUm: optional(quantities('Blades of the set', 'µm', 5, 2000, 40, 'Each blade once')),
    bandMinUm: optional(quantity('Band from', 'µm', 1, 2000, own)),
    bandMaxUm: optional(quantity('Band to', 'µm', 1, 2000, own)),
    residualMinUm: optional(field.clearance('Residual minimum', own)),
    reductionRule: optional(choice('Reduction is accepted when', field.acceptance)),
    residualRule: optional(choice('Residual is accepted when', field.acceptance)),
    guardFactor: optional(quantity('Factor of U', '', 0, 4, '2 by ISO 14253-1, 1.65 one-sided')),
  },
  result: {
    advice: maybe(
      word('Advice', {
        'read-again': 'read again',
        'go-on': 'go on',
        'nearly-there': 'nearly there',
        'stop-here': 'stop here',
        'too-far': 'too far: start again with another bearing',
      }),
    ),
    reductionUm: maybe(figure('Reduction so far', 'µm')),
    leftNearUm: maybe(figure('Still to the near edge', 'µm')),
    leftAimUm: maybe(figure('Still to the aim', 'µm')),
    leftFarUm: maybe(figure('Still to the far edge', 'µm')),
    stopFromUm: maybe(figure('Stop with a clearance from', 'µm')),
    stopToUm: maybe(figure('to', 'µm')),
    travelMinMm: maybe(figure('Travel still expected to the near edge, from', 'mm')),
    travelMaxMm: maybe(figure('Travel still expected, to', 'mm')),
    angleMinDeg: maybe(figure('Nut angle still expected, from', '°')),
    angleMaxDeg: maybe(figure('Nut angle still expected, to', '°')),
    ratioFrom: maybe(
      word('Expected by', {
        'this-mount': 'this mount’s own ratio so far',
        'band-source': 'the band’s source',
        'usual-range': 'the usual range',
      }),
    ),
    goesUm: maybe(figure('Stack that still goes', 'µm')),
    stopsUm: maybe(figure('Stack that goes no longer', 'µm')),
    nextStacks: maybe(
      rows('Stacks to try next', { totalUm: figure('Stack', 'µm'), bladesUm: figures('Blades', 'µm') }),
    ),
    smallestStepUm: maybe(figure('Smallest step that can be told', 'µm')),
  },
  fieldOf: { band: 'bandMaxUm', travelMm: 'stepsTravelMm' },
  run: (input) => {
    const { boreMm, clearanceClass, bandMinUm, bandMaxUm, reductionRule, residualRule, guardFactor, bladesUm } = input
    if ((typeof bandMinUm === 'number') !== (typeof bandMaxUm === 'number'))
      throw new InputError('conflict', 'bandMaxUm', 'A band of your own needs both its ends.')
    const ownBand =
      typeof bandMinUm === 'number' && typeof bandMaxUm === 'number' ? { minUm: bandMinUm, maxUm: bandMaxUm } : null
    const taper = input.taper ?? null
    const query: BandQuery = { boreMm, taper, clearanceClass, ownBand, ownResidualMinUm: input.residualMinUm ?? null }
    const [band, least] = [chooseBand(query), residualMinimum(query)]
    const guided = driveUpGuidance({
      bearing: { boreMm, taper, clearanceClass },
      bench: [...inRow('A', input.benchRowAUm), ...inRow('B', input.benchRowBUm)],
      steps: stepsOf(input),
      band: band.found ? band : null,
      noBand: band.found ? null : band.reason,
      residualMinimum: least.found ? least : null,
      travelTrusted: input.zeroFound ?? false,
      pitchMm: input.pitchMm ?? null,
      stacks: bladesUm ? stacksOf(bladesUm) : null,
      settings: {
        ...(reductionRule && { reductionRule }),
        ...(residualRule && { residualRule }),
        ...(typeof guardFactor === 'number' && { guardFactor }),
      },
    })
    return guided.kind === 'guided' ? shown(guided) : guided
  },
})

function shown(guided: DriveUpGuided) {
  const { advice, now, left, window, travel, feelers, nextStacks, smallestStepUm } = guided
  const { minMm, maxMm, angleDeg } = travel.toNear
  return {
    advice,
    reductionUm: now?.reductionUm,
    leftNearUm: left.nearUm,
    leftAimUm: left.aimUm,
    leftFarUm: left.farUm,
    stopFromUm: window.bottomUm,
    stopToUm: window.topUm,
    travelMinMm: minMm,
    travelMaxMm: maxMm,
    angleMinDeg: angleDeg?.min,
    angleMaxDeg: angleDeg?.max,
    ratioFrom: travel.ratio.from,
    goesUm: feelers?.goes.totalUm,
    stopsUm: feelers?.stops.totalUm,
    nextStacks,
    smallestStepUm,
    sentence: guided.sentence,
    source: guided.source,
    rule: guided.rule,
    cautions: guided.cautions,
  }
}

interface StepLists {
  stepsRowAUm?: readonly number[] | null | undefined
  stepsRowBUm?: readonly number[] | null | undefined
  stepsTravelMm?: readonly number[] | null | undefined
}

/** The steps from their lists: both rows of each, and its travel where travels are given. */
function stepsOf({ stepsRowAUm, stepsRowBUm, stepsTravelMm }: StepLists): DriveUpStep[] {
  const [a, b, travels] = [stepsRowAUm ?? [], stepsRowBUm ?? [], stepsTravelMm ?? []]
  if (a.length !== b.length)
    throw new InputError(
      'conflict',
      'stepsRowBUm',
      'Every step needs a reading in both rows: the lists differ in length.',
    )
  if (travels.length > 0 && travels.length !== a.length)
    throw new InputError('conflict', 'stepsTravelMm', 'Give a travel for every step, or for none.')
  return a.map((um, at) => ({
    readings: [...inRow('A', [um]), ...inRow('B', [b[at] ?? um])],
    travelMm: travels[at] ?? null,
  }))
}

function inRow(row: 'A' | 'B', readings: readonly number[]): { row: 'A' | 'B'; um: number }[] {
  return readings.map((um) => ({ row, um }))
}

export const guidanceCalculations = [guidance]
