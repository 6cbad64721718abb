export interface GaugeReading {
  um: number
  row: 'A' | 'B'
  /** Step of the drive-up that it was taken at, counted from 0; left out, every reading stands by itself. */
  step?: number
}

/** What the gauge is drawn from. All lengths are radial clearances in µm. */
export interface GaugeInput {
  benchUm: number | null
  /** Wanted reduction, µm. */
  bandUm: { minUm: number; maxUm: number } | null
  /** Limits of the clearance class, unmounted. */
  classUm: { minUm: number; maxUm: number } | null
  residualMinUm: number | null
  /** In the order in which they were taken. */
  readings: readonly GaugeReading[]
  /** Mean of the two row means, once there is one. */
  meanUm: number | null
  /** The part of the window to aim at, as clearances. */
  aimUm?: { minUm: number; maxUm: number } | null
  /** The mean is doubted, so no way to go is measured from it. */
  doubted?: boolean
}

export interface GaugeSize {
  width: number
  height: number
  /** Width kept free on the right for the labels. */
  labelWidth: number
  /** Micrometres in one unit of the scale: 1000 for mm. */
  umPerUnit: number
}

export type OffScale = 'above' | 'below' | null

export interface GaugeGeometry {
  axisX: number
  plotLeft: number
  plotRight: number
  top: number
  bottom: number
  ticks: { y: number; label: string }[]
  bench: { y: number } | null
  window: { topY: number; bottomY: number; topUm: number; bottomUm: number } | null
  classRange: { topY: number; bottomY: number } | null
  residual: { y: number } | null
  aim: { topY: number; bottomY: number; y: number; um: number } | null
  /** `age` counts the steps since: 0 is the newest. */
  readings: { x: number; y: number; row: 'A' | 'B'; um: number; off: OffScale; age: number }[]
  /** From step to step, the means of those with both rows. */
  trail: { x: number; y: number }[]
  mean: { y: number; off: OffScale } | null
  /** The way from the mean to the near edge of the window, or, past it, from its far edge; absent inside it. */
  toGo: { fromY: number; toY: number; um: number } | null
}

/** Differences below this are rounding of binary fractions, not clearance. */
export const roundingUm = 1e-9

const axisWidth = 52
const classWidth = 24
const topEdge = 26
const bottomEdge = 12
const readingGap = 28
const rowGap = 10

/** Mounted clearances that finish inside the band: bench − band max … bench − band min, µm. */
export function targetWindow(
  input: Pick<GaugeInput, 'benchUm' | 'bandUm'>,
): { topUm: number; bottomUm: number } | null {
  const { benchUm, bandUm } = input
  if (benchUm === null || bandUm === null) return null
  return { topUm: benchUm - bandUm.minUm, bottomUm: benchUm - bandUm.maxUm }
}

/** Places everything on the gauge, in pixels from its top left. Throws RangeError when a length is not a finite number. */
export function gaugeGeometry(input: GaugeInput, size: GaugeSize): GaugeGeometry {
  const scale = gaugeScale(input)
  const top = topEdge
  const bottom = size.height - bottomEdge
  const y = (um: number) => bottom - ((um - scale.lowUm) / (scale.highUm - scale.lowUm)) * (bottom - top)
  const place = (um: number): { y: number; off: OffScale } => {
    if (um > scale.highUm) return { y: top, off: 'above' }
    if (um < scale.lowUm) return { y: bottom, off: 'below' }
    return { y: y(um), off: null }
  }
  const plotLeft = axisWidth + classWidth
  const plotRight = Math.max(plotLeft + 40, size.width - size.labelWidth)
  const window = targetWindow(input)
  const mean = input.meanUm === null ? null : place(input.meanUm)

  return {
    axisX: axisWidth,
    plotLeft,
    plotRight,
    top,
    bottom,
    ticks: gaugeTicks(scale, (bottom - top) / 40, size.umPerUnit).map(({ um, label }) => ({ y: y(um), label })),
    bench: input.benchUm === null ? null : { y: y(input.benchUm) },
    window: window && { ...window, topY: y(window.topUm), bottomY: y(window.bottomUm) },
    classRange: input.classUm && { topY: y(input.classUm.maxUm), bottomY: y(input.classUm.minUm) },
    residual: input.residualMinUm === null ? null : { y: y(input.residualMinUm) },
    aim: input.aimUm ? aimPlace(input.aimUm, y) : null,
    ...gaugeReadings(input.readings, place, plotLeft + 14, plotRight - 44),
    mean,
    toGo: mean?.off === null && !input.doubted ? wayToGo(input.meanUm, mean, window, y) : null,
  }
}

function wayToGo(
  meanUm: number | null,
  mean: { y: number } | null,
  window: { topUm: number; bottomUm: number } | null,
  y: (um: number) => number,
): GaugeGeometry['toGo'] {
  if (meanUm === null || mean === null || window === null) return null
  if (meanUm > window.topUm + roundingUm) return { fromY: mean.y, toY: y(window.topUm), um: meanUm - window.topUm }
  if (meanUm < window.bottomUm - roundingUm)
    return { fromY: mean.y, toY: y(window.bottomUm), um: meanUm - window.bottomUm }
  return null
}

function aimPlace({ minUm, maxUm }: { minUm: number; maxUm: number }, y: (um: number) => number) {
  const um = (minUm + maxUm) / 2
  return { topY: y(maxUm), bottomY: y(minUm), y: y(um), um }
}

/** Readings of one step stand in one place, row A left of row B; without steps each has its own place. */
function gaugeReadings(
  readings: readonly GaugeReading[],
  place: (um: number) => { y: number; off: OffScale },
  left: number,
  right: number,
): Pick<GaugeGeometry, 'readings' | 'trail'> {
  const columns = [...new Set(readings.map(({ step }, index) => step ?? `alone ${index}`))]
  const newest = Math.max(0, ...readings.map(({ step }) => step ?? 0))
  const placed = readings.map((reading, index) => {
    const { um, row, step } = reading
    const x = readingX(columns.indexOf(step ?? `alone ${index}`), columns.length, left, right)
    const aside = step === undefined || row === 'A' ? 0 : rowGap
    return { um, row, ...place(um), x: x + aside, age: step === undefined ? 0 : newest - step }
  })
  return { readings: placed, trail: meansOfSteps(readings, placed, place) }
}

function meansOfSteps(
  readings: readonly GaugeReading[],
  placed: readonly { x: number }[],
  place: (um: number) => { y: number },
): { x: number; y: number }[] {
  const steps = [...new Set(readings.flatMap(({ step }) => (step === undefined ? [] : [step])))]
  return steps.flatMap((step) => {
    const rowMean = (row: 'A' | 'B'): number => {
      const own = readings.filter((reading) => reading.step === step && reading.row === row)
      return own.reduce((sum, { um }) => sum + um, 0) / own.length
    }
    const um = (rowMean('A') + rowMean('B')) / 2
    const x = (placed[readings.findIndex((reading) => reading.step === step)]?.x ?? 0) + rowGap / 2
    return Number.isNaN(um) ? [] : [{ x, y: place(um).y }]
  })
}

/** Readings stand left to right in the order taken, closer together as they grow many. */
function readingX(index: number, count: number, left: number, right: number): number {
  const gap = count > 1 ? Math.min(readingGap, Math.max(0, right - left) / (count - 1)) : 0
  return left + index * gap
}

interface Scale {
  lowUm: number
  highUm: number
}

/** The scale spans what is fixed; a reading stretches it by half at most, and is marked as off the scale beyond that. */
function gaugeScale(input: GaugeInput): Scale {
  const window = targetWindow(input)
  const fixed = [
    input.benchUm,
    window?.topUm,
    window?.bottomUm,
    input.classUm?.minUm,
    input.classUm?.maxUm,
    input.residualMinUm,
  ].filter((um): um is number => um !== null && um !== undefined)
  const taken = [...input.readings.map(({ um }) => um), ...(input.meanUm === null ? [] : [input.meanUm])]
  for (const um of [...fixed, ...taken])
    if (!Number.isFinite(um)) throw new RangeError('A clearance on the gauge must be a finite number of micrometres')

  const anchors = fixed.length > 0 ? fixed : taken
  if (anchors.length === 0) return { lowUm: 0, highUm: 200 }
  const low = Math.min(...anchors)
  const high = Math.max(...anchors)
  const span = Math.max(high - low, Math.abs(high) * 0.2, 20)
  const near = taken.filter((um) => um >= low - span / 2 && um <= high + span / 2)
  const pad = span * 0.08
  const lowUm = Math.min(low, ...near) - pad
  return { lowUm: low >= 0 ? Math.max(0, lowUm) : lowUm, highUm: Math.max(high, ...near) + pad }
}

/** Round steps of 1, 2 or 5 in the shown unit, at most `most` of them. */
function gaugeTicks({ lowUm, highUm }: Scale, most: number, umPerUnit: number): { um: number; label: string }[] {
  const rough = (highUm - lowUm) / umPerUnit / Math.max(2, most)
  const power = Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((n) => n * 10 ** power).find((s) => s >= rough) ?? 10 ** (power + 1)
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const first = Math.ceil(lowUm / umPerUnit / step)
  const last = Math.floor(highUm / umPerUnit / step)
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const value = (first + i) * step
    return { um: value * umPerUnit, label: value.toFixed(decimals) }
  })
}
