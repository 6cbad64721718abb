import { spreadLabels } from './spread-labels.ts'
import type { Verdict } from './verdict-mark.tsx'

/** How a fitment ended; absent while the bearing still runs. */
export type FitmentEnd = 'failed' | 'removed' | 'lost'

export interface LifeFitment {
  id: string
  /** Designation of the bearing, such as "22220 K/C3". */
  bearing: string
  /** ISO date or instant. */
  fittedOn: string
  removedOn?: string | undefined
  end?: FitmentEnd | undefined
  /** Failure mode in words, when it failed. */
  mode?: string | undefined
  verdict?: Verdict | undefined
  /** Run hours from fitted to removed, or to now. */
  runHours?: number | undefined
  runHoursEstimated?: boolean | undefined
  /** Days on which it was greased, ISO, any order. */
  greasedOn: readonly string[]
}

export interface LifeBar {
  id: string
  x: number
  width: number
  /** Still fitted: the bar ends today. */
  open: boolean
  /** Where the marks of start and end stand: at the bar's ends, moved aside where they would overlap. */
  startX: number
  endX: number
  ticks: number[]
  /** Greasings of this fitment; `ticks` may be fewer. */
  greasings: number
}

export interface LifeStripGeometry {
  bars: LifeBar[]
  years: { x: number; label: string }[]
  todayX: number
  greasings: number
  ticksDrawn: number
}

const leastBarWidth = 5
const leastTickGap = 4
const leastMarkGap = 14
const leastYearGap = 40
const dayMs = 86_400_000

function timeOf(iso: string): number {
  const time = Date.parse(iso)
  if (!Number.isFinite(time)) throw new RangeError(`"${iso}" is not a date`)
  return time
}

/**
 * Places fitments, greasings and years on one line `width` pixels long that ends today. Greasings closer than 4 px to the
 * last drawn one are left out; the counts say so. Throws RangeError for a date that is none.
 */
export function lifeStripGeometry(fitments: readonly LifeFitment[], today: string, width: number): LifeStripGeometry {
  const todayMs = timeOf(today)
  const firstMs = Math.min(todayMs - 365 * dayMs, ...fitments.map(({ fittedOn }) => timeOf(fittedOn)))
  const spanMs = todayMs - firstMs
  const x = (ms: number) => Math.min(width, Math.max(0, ((ms - firstMs) / spanMs) * width))

  const bars = apartMarks(
    fitments.map((fitment) => lifeBar(fitment, x, todayMs, width)),
    width,
  )
  return {
    bars,
    years: yearMarks(firstMs, todayMs, x, width),
    todayX: width,
    greasings: bars.reduce((sum, bar) => sum + bar.greasings, 0),
    ticksDrawn: bars.reduce((sum, bar) => sum + bar.ticks.length, 0),
  }
}

function lifeBar(fitment: LifeFitment, x: (ms: number) => number, todayMs: number, width: number): LifeBar {
  const start = x(timeOf(fitment.fittedOn))
  const open = fitment.removedOn === undefined
  const end = x(fitment.removedOn === undefined ? todayMs : timeOf(fitment.removedOn))
  const barWidth = Math.max(leastBarWidth, end - start)
  return {
    id: fitment.id,
    x: Math.min(start, width - barWidth),
    width: barWidth,
    open,
    startX: start,
    endX: end,
    ticks: thinned(fitment.greasedOn.map((on) => x(timeOf(on)))),
    greasings: fitment.greasedOn.length,
  }
}

function apartMarks(bars: LifeBar[], width: number): LifeBar[] {
  const starts = spreadLabels(
    bars.map(({ startX }) => startX),
    leastMarkGap,
    0,
    width,
  )
  const ends = spreadLabels(
    bars.map(({ endX }) => endX),
    leastMarkGap,
    0,
    width,
  )
  return bars.map((bar, index) => ({ ...bar, startX: starts[index]!, endX: ends[index]! }))
}

function thinned(xs: number[]): number[] {
  const kept: number[] = []
  for (const x of xs.sort((a, b) => a - b))
    if (kept.length === 0 || x - kept[kept.length - 1]! >= leastTickGap) kept.push(x)
  return kept
}

/** First days of years on the strip, every year or every 2nd, 5th, 10th where they would crowd. */
function yearMarks(firstMs: number, todayMs: number, x: (ms: number) => number, width: number) {
  const firstYear = new Date(firstMs).getUTCFullYear() + 1
  const lastYear = new Date(todayMs).getUTCFullYear()
  const perYear = (365.25 * dayMs * width) / (todayMs - firstMs)
  const every = [1, 2, 5, 10, 20, 50].find((n) => n * perYear >= leastYearGap) ?? 100
  const years: { x: number; label: string }[] = []
  for (let year = firstYear; year <= lastYear; year += 1)
    if (year % every === 0) years.push({ x: x(Date.UTC(year, 0, 1)), label: String(year) })
  return years
}
