import type { ClearanceClass } from '@shaftbook/standards/clearance-classes'
import type { Taper } from '@shaftbook/standards/table'
import { toNanometres } from './units.ts'

/** A row of a maker's chart with everything that a site enters; lengths in µm and mm. */
export interface EnteredChartRow {
  readonly overMm: number
  readonly inclMm: number
  readonly taper: Taper
  readonly clearanceClass: ClearanceClass | null
  readonly reductionMinUm: number
  readonly reductionMaxUm: number
  readonly residualMinCnUm: number | null
  readonly residualMinC3Um: number | null
  readonly residualMinC4Um: number | null
  readonly driveUpMinMm: number | null
  readonly driveUpMaxMm: number | null
}

export interface ChartFault {
  /** Index of the row, from 0. */
  readonly row: number
  readonly field: keyof EnteredChartRow
  readonly message: string
}

/** The residual minima of a row, from the tighter class to the looser. */
const residuals = [
  { field: 'residualMinCnUm', of: 'CN' },
  { field: 'residualMinC3Um', of: 'C3' },
  { field: 'residualMinC4Um', of: 'C4' },
] as const

/**
 * Everything by which the rows of a chart contradict themselves or each other, row by row: ranges that run backwards,
 * residual minima that fall from class to class or belong to another class, and rows of the same taper and class whose
 * bores overlap. Empty where there is nothing. What is only unusual is asked about by `checkChartRow`. `numberOf` is what
 * a row is called by, its place from 1 unless said otherwise.
 */
export function chartContradictions(
  rows: readonly EnteredChartRow[],
  numberOf: (at: number) => number = (at) => at + 1,
): ChartFault[] {
  const inRows = rows.flatMap((row, at) => ownFaults(row).map((fault) => ({ ...fault, row: at })))
  return [...inRows, ...overlaps(rows, numberOf)].toSorted((a, b) => a.row - b.row)
}

type OwnFault = Omit<ChartFault, 'row'>

function ownFaults(row: EnteredChartRow): OwnFault[] {
  return [...rangeFaults(row), ...residualFaults(row), ...driveUpFaults(row)]
}

function rangeFaults(row: EnteredChartRow): OwnFault[] {
  const { overMm, inclMm, reductionMinUm: min, reductionMaxUm: max } = row
  const backwards = `the range of bores runs upwards: ${overMm} to ${inclMm} mm does not`
  return [
    ...(inclMm <= overMm ? [{ field: 'inclMm', message: backwards } as const] : []),
    ...(toNanometres(min, 'um') <= 0
      ? [{ field: 'reductionMinUm', message: 'the least reduction has to be 0.001 µm or more' } as const]
      : []),
    // compared as they are kept, to the nanometre
    ...(toNanometres(max, 'um') <= toNanometres(min, 'um')
      ? [{ field: 'reductionMaxUm', message: 'the most reduction has to be larger than the least' } as const]
      : []),
  ]
}

function residualFaults(row: EnteredChartRow): OwnFault[] {
  const given = residuals.flatMap(({ field, of }) => {
    const um = row[field]
    return um === null ? [] : [{ field, of, um }]
  })
  const { clearanceClass } = row
  if (clearanceClass !== null) {
    return given
      .filter(({ of }) => of !== clearanceClass)
      .map(({ field, of }) => ({
        field,
        message: `the row is for ${clearanceClass} bearings: it has no clearance left for ${of}`,
      }))
  }
  return given.slice(1).flatMap((looser, before) => {
    const tighter = given[before]
    if (!tighter || looser.um >= tighter.um) return []
    const message = `a looser class has more clearance left: ${looser.of} (${looser.um} µm) is below ${tighter.of} (${tighter.um} µm)`
    return [{ field: looser.field, message }]
  })
}

function driveUpFaults({ driveUpMinMm: min, driveUpMaxMm: max }: EnteredChartRow): OwnFault[] {
  if ((min === null) !== (max === null)) {
    const field = min === null ? 'driveUpMinMm' : 'driveUpMaxMm'
    return [{ field, message: 'give both limits of the drive-up, or none' }]
  }
  if (min === null || max === null || max >= min) return []
  return [{ field: 'driveUpMaxMm', message: 'the most drive-up has to be as large as the least, or larger' }]
}

interface Placed {
  readonly row: EnteredChartRow
  readonly at: number
}

function overlaps(rows: readonly EnteredChartRow[], numberOf: (at: number) => number): ChartFault[] {
  const nameOf = ({ row, at }: Placed): string => `row ${numberOf(at)} (${row.overMm} to ${row.inclMm} mm)`
  const placed = rows.map((row, at) => ({ row, at })).filter(({ row }) => row.overMm < row.inclMm)
  return placed.flatMap((one, index) => {
    const other = placed.slice(index + 1).find(({ row }) => claimsTheSame(one.row, row))
    if (!other) return []
    const message = `${nameOf(one)} overlaps ${nameOf(other)}`
    return [
      { row: one.at, field: 'inclMm', message },
      { row: other.at, field: 'overMm', message: `${nameOf(other)} overlaps ${nameOf(one)}` },
    ]
  })
}

function claimsTheSame(one: EnteredChartRow, other: EnteredChartRow): boolean {
  const alike = one.taper === other.taper && one.clearanceClass === other.clearanceClass
  return alike && one.overMm < other.inclMm && other.overMm < one.inclMm
}
