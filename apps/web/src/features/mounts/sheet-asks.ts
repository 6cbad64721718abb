import type { SheetScope, StepKey } from './sheet-steps.ts'
import { seatPlaces, type ReadingPair, type Sheet } from './sheet.ts'

/** How much is told of something that the sheet asks. */
export type Told = 'nothing' | 'part' | 'all'

/** One thing that a step asks for. */
export interface Ask {
  /** The key of its (first) field. */
  key: string
  step: StepKey
  label: string
  /** A measured number: it stays blank only with a reason. */
  measured?: boolean
  told: (sheet: Sheet) => Told
}

type Applies = (scope: SheetScope, sheet: Sheet, facts: AskFacts) => boolean

/** What the position itself decides beside the scope. */
export interface AskFacts {
  hasMeter: boolean
  /** Lines of the kit that were planned. */
  kitLineIds: readonly string[]
}

const anyText = (...texts: readonly string[]): Told => (texts.some((text) => text.trim() !== '') ? 'all' : 'nothing')
const shareOf = (parts: readonly boolean[]): Told =>
  parts.every(Boolean) ? 'all' : parts.some(Boolean) ? 'part' : 'nothing'
const bothRows = (pairs: readonly ReadingPair[]): Told =>
  shareOf((['A', 'B'] as const).map((row) => pairs.some((pair) => pair[row].text.trim() !== '')))

type Line = readonly [
  step: StepKey,
  key: string,
  label: string,
  told: (sheet: Sheet) => Told,
  when?: Applies | undefined,
  /** `without-judgement`: where readings are judged they are needed, and no reason stands for them. */
  measured?: 'measured' | 'without-judgement',
]

const ringsGoIn: Applies = ({ rings }, { ringCount }) => rings && Number(ringCount) > 0

/** Everything that counts as asked, in the order of the work. What is only room for a remark is not in it. */
const lines: readonly Line[] = [
  ['safe', 'reason', 'Why a bearing is fitted', (sheet) => anyText(sheet.reason)],
  [
    'safe',
    'cautionsSeenBy',
    'Cautions read',
    (sheet) => anyText(sheet.cautionsSeenBy),
    ({ purpose }) => purpose !== 'correction',
  ],
  [
    'safe',
    'meterShowsHours',
    'Hour meter',
    (sheet) => anyText(sheet.meterShowsHours, sheet.noHoursReason),
    ({ purpose }, _sheet, { hasMeter }) => hasMeter && purpose !== 'correction',
  ],
  ['strip', 'endKind', 'How the old bearing ended', (sheet) => anyText(sheet.endKind)],
  [
    'strip',
    'modeClause',
    'Failure mode',
    (sheet) => anyText(sheet.modeClause ?? ''),
    (_scope, { endKind }) => endKind === 'failed',
  ],
  ['strip', 'foundRingCount', 'Rings as found', (sheet) => anyText(sheet.foundRingCount)],
  ['strip', 'foundGrease', 'Grease as found', (sheet) => anyText(sheet.foundGrease)],
  [
    'seat',
    'shaft.1x',
    'Shaft diameters',
    (sheet) => shareOf(seatPlaces.map((place) => sheet.shaft[place].trim() !== '')),
    ({ shaftDiameters }) => shaftDiameters,
    'measured',
  ],
  ['seat', 'shaftSurface', 'Surface of the shaft', (sheet) => anyText(sheet.shaftSurface)],
  ['seat', 'shaftDecision', 'What becomes of the shaft', (sheet) => anyText(sheet.shaftDecision)],
  [
    'seat',
    'housing.1x',
    'Housing bore',
    (sheet) => shareOf(seatPlaces.map((place) => sheet.housing[place].trim() !== '')),
    undefined,
    'measured',
  ],
  [
    'seat',
    'housingSeatWidthMm',
    'Width of the housing seat',
    (sheet) => anyText(sheet.housingSeatWidthMm),
    undefined,
    'measured',
  ],
  ['seat', 'softFootMm', 'Soft foot', (sheet) => anyText(sheet.softFootMm), undefined, 'measured'],
  ['seat', 'housingDecision', 'What becomes of the housing', (sheet) => anyText(sheet.housingDecision)],
  ['kit', 'sleeveCode', 'Sleeve', (sheet) => anyText(sheet.sleeveCode), ({ sleeve, kit }) => sleeve && !kit],
  ['kit', 'nutCode', 'Nut', (sheet) => anyText(sheet.nutCode), ({ nut, kit }) => nut && !kit],
  ['kit', 'lockingCode', 'Washer or clip', (sheet) => anyText(sheet.lockingCode), ({ nut, kit }) => nut && !kit],
  ['bench', 'serial', 'Serial number', (sheet) => anyText(sheet.serial), ({ bearing }) => bearing],
  ['bench', 'gauge', 'Feeler set', (sheet) => anyText(sheet.gauge), ({ clearance }) => clearance],
  [
    'bench',
    'temperatureC',
    'Temperature of bearing and gauge',
    (sheet) => anyText(sheet.temperatureC),
    ({ clearance }) => clearance,
    'measured',
  ],
  [
    'bench',
    'bench.0.A',
    'Bench clearance',
    (sheet) => bothRows(sheet.bench),
    ({ clearance }) => clearance,
    'without-judgement',
  ],
  ['drive', 'zeroPointMethod', 'Zero point', (sheet) => anyText(sheet.zeroPointMethod), ({ taper }) => taper],
  [
    'drive',
    'byFeelPerson',
    'Judged by',
    (sheet) => anyText(sheet.byFeelPerson),
    (_scope, { method }) => method === 'by-feel',
  ],
  [
    'drive',
    'mounted.0.A',
    'Mounted clearance',
    (sheet) => bothRows(sheet.mounted),
    ({ clearance }) => clearance,
    'without-judgement',
  ],
  [
    'drive',
    'driveUpMm',
    'Axial travel or nut angle',
    (sheet) => anyText(sheet.driveUpMm, sheet.nutAngleDeg),
    ({ taper }) => taper,
    'measured',
  ],
  ['lock', 'lockedWith', 'Locked with', (sheet) => anyText(sheet.lockedWith)],
  [
    'lock',
    'lockForwardDeg',
    'Nut forward to the slot',
    (sheet) => anyText(sheet.lockForwardDeg),
    undefined,
    'measured',
  ],
  ['rings', 'ringCount', 'Locating rings', (sheet) => anyText(sheet.ringCount), ({ rings }) => rings],
  ['rings', 'ringWidthMm', 'Width of a ring', (sheet) => anyText(sheet.ringWidthMm), ringsGoIn, 'measured'],
  ['rings', 'ringsPlaced', 'Where the rings are', (sheet) => anyText(sheet.ringsPlaced), ringsGoIn],
  ['rings', 'sealsTurn', 'Seals turn with the shaft', (sheet) => anyText(sheet.sealsTurn)],
  [
    'grease',
    'greaseBearingG',
    'Grease in the bearing',
    (sheet) => anyText(sheet.greaseBearingG),
    undefined,
    'measured',
  ],
  [
    'grease',
    'greaseHousingG',
    'Grease in the housing',
    (sheet) => anyText(sheet.greaseHousingG),
    undefined,
    'measured',
  ],
  ['cap', 'marksMatch', 'Cap in its own place', (sheet) => anyText(sheet.marksMatch)],
  [
    'cap',
    'capBoltTorqueNm',
    'Torque of the cap bolts',
    (sheet) => anyText(sheet.capBoltTorqueNm),
    undefined,
    'measured',
  ],
  ['turn', 'turnsFree', 'Turned by hand', (sheet) => anyText(sheet.turnsFree)],
  [
    'start',
    'startReadings.0.temperatureC',
    'Start-up check, or why it comes later',
    (sheet) =>
      anyText(sheet.startLaterReason, ...sheet.startReadings.map((each) => each.temperatureC + each.vibrationMmS)),
  ],
]

/** What the sheet asks at this position, as it stands. */
export function asksOf(scope: SheetScope, sheet: Sheet, facts: AskFacts): Ask[] {
  const judgedByReadings = scope.taper && sheet.method === 'feeler'
  const asked = lines
    .filter(([step, _key, _label, _told, when]) => scope.steps.includes(step) && (!when || when(scope, sheet, facts)))
    .map(([step, key, label, told, _when, measured]) => ({
      step,
      key,
      label,
      told,
      measured: measured === 'measured' || (measured === 'without-judgement' && !judgedByReadings),
    }))
  return [...asked, ...(scope.kit && scope.steps.includes('kit') ? kitAsks(facts) : [])]
}

function kitAsks({ kitLineIds }: AskFacts): Ask[] {
  return kitLineIds.map((id, at) => ({
    step: 'kit',
    key: `kitCheck.${id}`,
    label: `Line ${at + 1} of the kit`,
    told: (sheet) => anyText(sheet.kitCheck[id]?.found ?? ''),
  }))
}

/** Measured numbers that are left out and have no reason yet. */
export function openBlanks(asks: readonly Ask[], sheet: Sheet): Ask[] {
  return asks.filter((ask) => ask.measured === true && ask.told(sheet) !== 'all' && !sheet.blanks[ask.key])
}

/** The label of something that the sheet asks, by the key under which its reason for staying blank is kept. */
export function askLabel(key: string): string {
  return lines.find(([, known]) => known === key)?.[2] ?? key
}
