import { checkRatio } from '@shaftbook/bearing/drive-up'
import { lockStepOfNut, travelForTurn, turnForTravel } from '@shaftbook/bearing/nut-turn'
import { formula } from '@shaftbook/bearing/source'
import { forecastDriveUp, smoothingUm, travelForReductionMm, usualSmoothingUm } from '@shaftbook/bearing/thick-ring'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { count, optional, quantity } from './field.ts'
import { figure, maybe, word } from './figure.ts'

const ring = {
  boreMm: field.boreMm,
  outsideDiameterMm: field.outsideDiameterMm,
  taper: field.taper,
  widthMm: optional(field.widthMm),
  shaftBoreMm: optional(field.shaftBoreMm),
  innerRacewayMm: optional(field.innerRacewayMm),
  smoothingUm: optional(quantity('Smoothing', 'µm', 0, 200, `${usualSmoothingUm} µm where it is left empty`)),
  friction: optional(
    quantity('Friction', '', 0.02, 0.5, '0.15 where it is left empty; dry 0.12 to 0.18, oiled 0.08 to 0.12'),
  ),
}

const forecastFigures = {
  travelMm: figure('Travel', 'mm'),
  interferenceUm: figure('Interference', 'µm'),
  reductionUm: figure('Reduction', 'µm'),
  ratio: figure('Travel over reduction', ''),
  contactPressureMpa: figure('Contact pressure', 'MPa'),
  hoopStressMpa: figure('Hoop stress at the bore', 'MPa'),
  driveForceKn: maybe(figure('Drive force', 'kN')),
}

const driveUp = calculation({
  name: 'drive-up',
  group: 'drive-up',
  title: 'Reduction from travel',
  words: 'Interference = travel · taper − smoothing; reduction = interference · d/F, less for a hollow shaft (Lamé).',
  input: { travelMm: quantity('Travel from the zero point', 'mm', 0, 50), ...ring },
  result: forecastFigures,
  run: (input) => inKn(forecastDriveUp(input)),
})

const travel = calculation({
  name: 'travel-for-reduction',
  group: 'drive-up',
  title: 'Travel for a reduction',
  words: 'Travel = (reduction / (d/F) + smoothing) / taper: the forecast turned round.',
  input: { reductionUm: quantity('Reduction wanted', 'µm', 1, 2000), ...ring },
  result: forecastFigures,
  fieldOf: { travelMm: 'reductionUm' },
  run: ({ reductionUm, ...input }) =>
    inKn(forecastDriveUp({ ...input, travelMm: travelForReductionMm(reductionUm, input) })),
})

const nut = {
  nutCode: optional(field.nutCode),
  pitchMm: optional(quantity('Pitch of the thread', 'mm', 0.2, 20, 'Instead of the nut’s code')),
  taper: field.taper,
}
const turnFigures = {
  angleDeg: maybe(figure('Nut angle', '°')),
  turns: maybe(figure('Turns', '')),
  travelMm: maybe(figure('Travel', 'mm')),
  wedgeUm: maybe(figure('Growth of the taper, before smoothing', 'µm')),
  pitchMm: maybe(figure('Pitch', 'mm')),
}

const nutAngle = calculation({
  name: 'nut-angle',
  group: 'drive-up',
  title: 'Nut angle for a travel',
  words: 'Angle = 360° · travel / pitch of the thread.',
  input: { travelMm: quantity('Travel from the zero point', 'mm', 0, 50), ...nut },
  result: turnFigures,
  run: ({ travelMm, taper, ...choice }) => turnForTravel(travelMm, choice, taper),
})

const nutTravel = calculation({
  name: 'nut-travel',
  group: 'drive-up',
  title: 'Travel of a nut angle',
  words: 'Travel = pitch of the thread · angle / 360°.',
  input: { angleDeg: quantity('Nut angle from the zero point', '°', 0, 3600), ...nut },
  result: turnFigures,
  run: ({ angleDeg, taper, ...choice }) => travelForTurn(angleDeg, choice, taper),
})

const lockStep = calculation({
  name: 'lock-step',
  group: 'drive-up',
  title: 'Lock step of nut and washer',
  words: 'With s slots and N tabs the nut locks every 360° / lcm(s, N): 360° / (4 N) for four slots and an odd N.',
  input: {
    nutCode: field.nutCode,
    tabs: optional(count('Tabs counted on the washer', '', 3, 100, 'Left empty, the table’s number is taken')),
    taper: field.taper,
  },
  result: {
    stepDeg: maybe(figure('Step', '°')),
    axialUm: maybe(figure('Travel of one step', 'µm')),
    wedgeUm: maybe(figure('Reduction of one step, at most', 'µm')),
    slots: maybe(figure('Slots', '')),
    tabs: maybe(figure('Tabs', '')),
  },
  run: ({ nutCode, tabs, taper }) => lockStepOfNut(nutCode, tabs ?? null, taper),
})

const ratio = calculation({
  name: 'drive-up-ratio',
  group: 'drive-up',
  title: 'Travel against reduction',
  words:
    'Travel over reduction lies between 12 and 20 on a taper of 1:12, 30 and 50 on 1:30; to 24 and 60 below 40 mm bore.',
  input: {
    driveUpMm: quantity('Travel from the zero point', 'mm', 0, 50),
    reductionUm: quantity('Reduction', 'µm', -2000, 2000),
    taper: field.taper,
    boreMm: field.boreMm,
  },
  result: {
    verdict: word('Verdict', {
      plausible: 'plausible',
      'too-low': 'too low: impossible for steel',
      'too-high': 'too high',
      'not-done': 'not compared',
    }),
    ratio: maybe(figure('Travel over reduction', '')),
    lowest: figure('Lowest', ''),
    highest: figure('Highest', ''),
  },
  run: (input) => checkRatio(input),
})

const smoothing = calculation({
  name: 'smoothing',
  group: 'drive-up',
  title: 'Smoothing of rough surfaces',
  words: 'Loss of diameter = 0.8 · (RzA + RzB), press-fit practice.',
  input: { rzAUm: quantity('Rz of one surface', 'µm', 0, 100), rzBUm: quantity('Rz of the other', 'µm', 0, 100) },
  result: { smoothingUm: figure('Smoothing', 'µm') },
  run: ({ rzAUm, rzBUm }) => ({
    smoothingUm: smoothingUm(rzAUm, rzBUm),
    source: formula('0.8 · (RzA + RzB)'),
    rule: 'smoothing',
    cautions: [],
  }),
})

export const driveUpCalculations = [driveUp, travel, nutAngle, nutTravel, lockStep, ratio, smoothing]

function inKn<T extends { driveForceN: number | null }>(forecast: T): T & { driveForceKn: number | null } {
  return { ...forecast, driveForceKn: forecast.driveForceN === null ? null : forecast.driveForceN / 1000 }
}
