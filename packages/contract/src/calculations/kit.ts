import { bearingFacts, partFacts } from '@shaftbook/bearing/bearing-facts'
import { parseDesignation } from '@shaftbook/bearing/designation'
import { mayReplace } from '@shaftbook/bearing/interchange'
import { proposeKit } from '@shaftbook/bearing/kit'
import { checkKitPair } from '@shaftbook/bearing/kit-pair'
import { checkLocating } from '@shaftbook/bearing/locating'
import { locatingRings } from '@shaftbook/bearing/rings'
import { calculation } from './calculation.ts'
import * as field from './common-fields.ts'
import { choice, optional, quantity, text, texts, yesNo } from './field.ts'
import { figure, maybe, rows, saying, sayings, whether, word } from './figure.ts'

const seatWidthMm = quantity('Width of the housing seat, measured', 'mm', 5, 1000)
const growth = {
  shaftLengthMm: optional(quantity('Length of the shaft to the locating position', 'mm', 0, 50_000)),
  temperatureRiseK: optional(quantity('Rise of its temperature', 'K', 0, 300)),
}

const bearingCode = calculation({
  name: 'bearing-code',
  group: 'kit',
  title: 'What a designation says',
  words:
    'Basic code, series, bore, taper, clearance class and other suffixes; dimensions by ISO 15 where the table has them.',
  input: { bearing: field.bearing },
  result: {
    printed: saying('Written'),
    basicCode: saying('Basic code'),
    series: saying('Series'),
    boreMm: figure('Bore d', 'mm', 4),
    outsideDiameterMm: maybe(figure('Outside diameter D', 'mm', 4)),
    widthMm: maybe(figure('Width B', 'mm', 4)),
    taper: maybe(word('Taper', { '1:12': '1:12', '1:30': '1:30' })),
    clearanceClass: saying('Clearance class'),
    suffixes: sayings('Other suffixes'),
  },
  run: ({ bearing }) => bearingFacts(bearing, 'bearing'),
})

const partCode = calculation({
  name: 'part-code',
  group: 'kit',
  title: 'What a part’s code says',
  words: 'Sleeves, nuts, washers, clips and housings by the tables of ISO 2982, DIN 981, 5406, 5415 and 736 to 739.',
  input: { code: text('Code', 'Such as H320, KM20, MB20 or SN520') },
  result: {
    kind: word('Kind', { sleeve: 'sleeve', nut: 'nut', washer: 'washer', clip: 'clip', housing: 'housing' }),
    code: saying('Written'),
    system: word('Thread', { metric: 'metric', inch: 'inch' }),
    facts: sayings('What the tables say'),
  },
  run: ({ code }) => partFacts(code),
})

const kitProposal = calculation({
  name: 'kit-proposal',
  group: 'kit',
  title: 'Kit of a position',
  words:
    'Sleeve, nut, washer or clip by the bearing; rings by the measured seat; the shaft and the housing against the tables.',
  input: {
    bearing: field.bearing,
    locating: yesNo('The position holds the shaft (locating)'),
    shaftMm: optional(quantity('Shaft, measured', 'mm', 5, 1000)),
    shaftSystem: optional(choice('Shaft is', { metric: 'metric', inch: 'inch' })),
    housingCode: optional(text('Housing', 'Such as SN520')),
    seatWidthMm: optional(seatWidthMm),
    bearingWidthMm: optional(quantity('Width of the bearing', 'mm', 3, 1000, 'Left empty, the table’s is taken')),
    oneRing: optional(yesNo('One ring on the lock-nut side instead of two')),
    ...growth,
    greaseG: optional(quantity('Grease planned', 'g', 0, 100_000)),
  },
  result: {
    lines: rows('Kit', {
      part: saying('Part'),
      code: maybe(saying('Code')),
      pieces: maybe(figure('Pieces', 'pc')),
      massG: maybe(figure('Mass', 'g')),
      need: saying('Need'),
      note: saying('Note'),
    }),
    questions: sayings('To be answered'),
  },
  run: ({ bearing, seatWidthMm, shaftMm, shaftSystem, greaseG, housingCode, ...given }) => {
    const bearingWidthMm = given.bearingWidthMm ?? bearingFacts(bearing, 'bearing').widthMm
    const known = typeof seatWidthMm === 'number' && typeof bearingWidthMm === 'number'
    const kit = proposeKit({
      bearing: parseDesignation(bearing, 'bearing'),
      rings: known ? ringInput({ ...given, seatWidthMm, bearingWidthMm }) : null,
      greaseG: greaseG ?? null,
      shaft: typeof shaftMm === 'number' ? { mm: shaftMm, system: shaftSystem ?? null } : null,
      housingCode: housingCode ?? null,
    })
    const lines = kit.lines.map(({ quantity, unit, ...line }) => ({
      ...line,
      ...(unit === 'g' ? { massG: quantity } : { pieces: quantity }),
    }))
    return { ...kit, lines }
  },
})

const kitCheck = calculation({
  name: 'kit-check',
  group: 'kit',
  title: 'Do these parts belong together',
  words:
    'Same bore and taper, a sleeve that lists the bearing’s series, one thread for sleeve, nut and washer or clip.',
  input: {
    bearing: field.bearing,
    sleeveCode: text('Sleeve', 'Such as H320'),
    nutCode: optional(field.nutCode),
    lockingCode: optional(text('Washer or clip', 'Such as MB20')),
  },
  result: {
    verdict: word('Verdict', { fits: 'they belong together', refused: 'they do not', ask: 'ask first' }),
    findings: sayings('Why'),
  },
  run: ({ bearing, ...codes }) => {
    const check = checkKitPair({ bearing: parseDesignation(bearing, 'bearing'), ...codes })
    return { ...check, findings: check.findings.map(({ sentence }) => sentence) }
  },
})

const interchange = calculation({
  name: 'interchange',
  group: 'kit',
  title: 'May one bearing replace another',
  words:
    'Code for code with the same basic code, bore, class, cage limits and groove W33; the rest is the engineer’s, or never.',
  input: {
    needed: text('Needed', 'Such as 22220 K/C3'),
    offered: text('Offered', 'Such as 22220 EK/C3'),
    sameCageLimits: optional(yesNo('The cages were compared: same temperature limits')),
    greasePlanChanged: optional(yesNo('The grease plan was changed for a sealed bearing')),
  },
  result: {
    verdict: word('Verdict', { allowed: 'allowed', 'ask-engineer': 'ask the engineer', never: 'never' }),
    reasons: sayings('Why'),
  },
  run: ({ needed, offered, ...context }) =>
    mayReplace(parseDesignation(needed, 'needed'), parseDesignation(offered, 'offered'), {
      sameCageLimits: context.sameCageLimits ?? false,
      greasePlanChanged: context.greasePlanChanged ?? false,
    }),
})

const rings = calculation({
  name: 'locating-rings',
  group: 'kit',
  title: 'Locating rings from the measured seat',
  words:
    'Two rings of (seat − B) / 2 or one of seat − B; a bearing that slides gets none and needs α · length · rise of end play each side.',
  input: {
    seatWidthMm,
    bearingWidthMm: field.widthMm,
    locating: yesNo('The position holds the shaft (locating)'),
    oneRing: optional(yesNo('One ring on the lock-nut side instead of two')),
    ...growth,
  },
  result: {
    outcome: word('Outcome', { rings: 'rings', none: 'no rings', refused: 'does not go together' }),
    count: maybe(figure('Rings', '')),
    widthMm: maybe(figure('Width of each', 'mm', 4)),
    offCentreMm: maybe(figure('Off centre', 'mm')),
    endPlayEachSideMm: maybe(figure('End play on each side', 'mm')),
    neededMm: maybe(figure('End play needed', 'mm')),
    enough: maybe(whether('Enough end play')),
  },
  run: (input) => {
    const plan = locatingRings(ringInput(input))
    return { ...plan, outcome: plan.kind }
  },
})

const locating = calculation({
  name: 'locating-check',
  group: 'kit',
  title: 'Which position holds the shaft',
  words: 'Exactly one position of a shaft is locating; none and it floats, several and the bearings fight.',
  input: {
    locatingTags: texts('Positions that are locating', 'Their tags'),
    otherTags: texts('Positions that let it slide', 'Their tags'),
  },
  result: {
    verdict: word('Verdict', {
      one: 'one holds it',
      none: 'none holds it',
      several: 'several hold it',
      'no-positions': 'no positions',
    }),
    needsOverride: whether('Only the engineer may let it stand'),
  },
  run: ({ locatingTags, otherTags }) =>
    checkLocating([
      ...locatingTags.map((tag) => ({ tag, locating: true })),
      ...otherTags.map((tag) => ({ tag, locating: false })),
    ]),
})

export const kitCalculations = [bearingCode, partCode, kitProposal, kitCheck, interchange, rings, locating]

interface RingsGiven {
  seatWidthMm: number
  bearingWidthMm: number
  locating: boolean
  oneRing?: boolean | null | undefined
  shaftLengthMm?: number | null | undefined
  temperatureRiseK?: number | null | undefined
}

function ringInput({ oneRing, shaftLengthMm, temperatureRiseK, seatWidthMm, bearingWidthMm, locating }: RingsGiven) {
  return {
    seatWidthMm,
    bearingWidthMm,
    locating,
    oneRing: oneRing ?? false,
    shaftLengthMm: shaftLengthMm ?? 0,
    temperatureRiseK: temperatureRiseK ?? 0,
  }
}
