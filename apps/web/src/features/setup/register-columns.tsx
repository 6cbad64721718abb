import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { bladesSummary, bladeUnit } from './blade-text.ts'
import { attitudeWords, bearingKindWords, gaugeKindWords, seatWords, thickenerName } from './register-words.ts'
import type { RowOf } from './registers.ts'

const nothing = '–'

/** A measure that may be not known, with its unit. */
const measured = (value: number | null, unit: string) => (value === null ? nothing : `${value} ${unit}`)

export const areaColumns: DataColumn<RowOf<'areas'>>[] = [
  { key: 'name', header: 'Area', cell: (row) => row.name, phone: 'title' },
  { key: 'code', header: 'Code', cell: (row) => row.code },
  { key: 'walkingOrder', header: 'Walking order', cell: (row) => row.walkingOrder, align: 'right' },
]

export const machineColumns: DataColumn<RowOf<'machines'>>[] = [
  { key: 'tag', header: 'Machine', cell: (row) => row.tag, phone: 'title' },
  { key: 'name', header: 'Name', cell: (row) => row.name },
  { key: 'kind', header: 'Kind', cell: (row) => row.kind },
  { key: 'use', header: 'Use', cell: (row) => (row.standby ? 'stands by' : 'regular') },
  { key: 'hours', header: 'Average', unit: 'h a day', cell: (row) => row.hoursPerDay, align: 'right' },
]

export const shaftColumns: DataColumn<RowOf<'shafts'>>[] = [
  { key: 'code', header: 'Shaft', cell: (row) => row.code, phone: 'title' },
  { key: 'name', header: 'Name', cell: (row) => row.name },
  { key: 'attitude', header: 'Attitude', cell: (row) => attitudeWords[row.attitude] },
  {
    key: 'hollow',
    header: 'Bore through',
    cell: (row) => (row.hollowBoreMm === 0 ? 'solid' : `${row.hollowBoreMm} mm`),
    align: 'right',
  },
  { key: 'speed', header: 'Speed', cell: (row) => measured(row.speedRpm, 'rev/min'), align: 'right' },
]

export const positionColumns: DataColumn<RowOf<'positions'>>[] = [
  { key: 'tag', header: 'Position', cell: (row) => row.tag, phone: 'title' },
  { key: 'name', header: 'Name', cell: (row) => row.name },
  { key: 'locating', header: 'Locating', cell: (row) => (row.locating ? 'locating' : 'non-locating') },
  { key: 'seat', header: 'Seat', cell: (row) => seatWords[row.seat] },
  { key: 'housing', header: 'Housing', cell: (row) => row.housingCode ?? nothing },
  { key: 'shaft', header: 'Shaft', cell: (row) => measured(row.shaftDiameterMm, 'mm'), align: 'right' },
  { key: 'use', header: 'Use', cell: (row) => (row.retiredAt ? 'retired' : 'in use') },
]

export const meterColumns: DataColumn<RowOf<'meters'>>[] = [
  { key: 'name', header: 'Meter', cell: (row) => row.name, phone: 'title' },
  {
    key: 'rollover',
    header: 'Starts again at',
    cell: (row) => (row.rolloverAtHours === null ? 'never' : `${formatCount(row.rolloverAtHours)} h`),
    align: 'right',
  },
]

export const greaseColumns: DataColumn<RowOf<'greases'>>[] = [
  { key: 'name', header: 'Grease', cell: (row) => row.name, phone: 'title' },
  { key: 'thickener', header: 'Thickener', cell: (row) => thickenerName(row.thickener) },
  { key: 'code', header: 'Code', cell: (row) => row.code ?? nothing },
  { key: 'grade', header: 'NLGI', cell: (row) => row.nlgiGrade, align: 'right' },
  {
    key: 'oil',
    header: 'Base oil at 40 °C',
    cell: (row) => measured(row.baseOilViscosity40cMm2s, 'mm²/s'),
    align: 'right',
  },
]

/** The blade sets, with a set whose date has passed marked; `today` is the plant's day. */
export function gaugeColumns(today: string): DataColumn<RowOf<'gauges'>>[] {
  return [
    { key: 'name', header: 'Gauge', cell: (row) => row.name, phone: 'title' },
    { key: 'kind', header: 'Kind', cell: (row) => gaugeKindWords[row.kind] },
    { key: 'blades', header: 'Blades', cell: (row) => bladesSummary(row.bladesUm, bladeUnit(row.kind)) },
    { key: 'checked', header: 'Checked until', cell: (row) => checkedWords(row.checkedUntil, today) },
    { key: 'note', header: 'Note', cell: (row) => row.note || nothing },
  ]
}

function checkedWords(until: string | null, today: string): string {
  if (until === null) return nothing
  return until < today ? `${formatDay(until)}, passed: have it checked` : formatDay(until)
}

export const bearingTypeColumns: DataColumn<RowOf<'bearing-types'>>[] = [
  { key: 'designation', header: 'Bearing type', cell: (row) => row.designation, sortable: true, phone: 'title' },
  { key: 'kind', header: 'Kind', cell: (row) => bearingKindWords[row.kind] },
  { key: 'taper', header: 'Taper', cell: (row) => row.taper ?? 'cylindrical' },
  { key: 'class', header: 'Class', cell: (row) => row.clearanceClass },
  { key: 'boreMm', header: 'Bore', unit: 'mm', cell: (row) => row.boreMm, align: 'right', sortable: true },
  { key: 'outside', header: 'Outside', unit: 'mm', cell: (row) => row.outsideDiameterMm, align: 'right' },
  { key: 'width', header: 'Width', unit: 'mm', cell: (row) => row.widthMm, align: 'right' },
  { key: 'mass', header: 'Mass', cell: (row) => measured(row.massKg, 'kg'), align: 'right', phone: 'hidden' },
]
