import type { ClientBase } from 'pg'
import type {
  BearingTypeRow,
  GreaseRow,
  KitLineRow,
  KitRow,
  MakerChartBandRow,
  MakerChartRow,
  PartRow,
} from './catalogue-rows.ts'
import type { GreasePlanRow, GreasingRow, PositionRow } from './position-rows.ts'
import type { BearingRow, FitmentRow, MountReadingRow, MountRecordRow, RemovalRow } from './record-rows.ts'
import type { GaugeRow, MountDecisionRow, MountPlanRow } from './sheet-rows.ts'
import type { GreaseChangeRow, ObservationRow } from './watch-rows.ts'
import type {
  AreaRow,
  MachineRow,
  MembershipRow,
  MeterReadingRow,
  MeterRow,
  PersonRow,
  ShaftRow,
  SiteRow,
} from './site-rows.ts'

/** The tables that rows can be inserted into, with what a row of each holds. */
export interface RowOf {
  site: SiteRow
  person: PersonRow
  membership: MembershipRow
  area: AreaRow
  machine: MachineRow
  shaft: ShaftRow
  meter: MeterRow
  meter_reading: MeterReadingRow
  bearing_type: BearingTypeRow
  grease: GreaseRow
  maker_chart: MakerChartRow
  maker_chart_row: MakerChartBandRow
  part: PartRow
  kit: KitRow
  kit_line: KitLineRow
  position: PositionRow
  grease_plan: GreasePlanRow
  greasing: GreasingRow
  bearing: BearingRow
  fitment: FitmentRow
  mount_record: MountRecordRow
  mount_reading: MountReadingRow
  removal: RemovalRow
  gauge: GaugeRow
  mount_plan: MountPlanRow
  mount_decision: MountDecisionRow
  observation: ObservationRow
  grease_change: GreaseChangeRow
}
export type TableName = keyof RowOf

const rowsAtOnce = 2000

/** Inserts rows in bulk, through the triggers; the transaction has to have chosen the rows' site (`inSite`). */
export async function insertRows<T extends TableName>(
  client: ClientBase,
  table: T,
  rows: readonly RowOf[T][],
): Promise<void> {
  const [first] = rows
  if (first === undefined) return
  const columns = Object.keys(first).map(columnName).join(', ')
  const statement = `insert into "${table}" (${columns}) select ${columns} from jsonb_populate_recordset(null::"${table}", $1)`
  for (let from = 0; from < rows.length; from += rowsAtOnce) {
    const batch = rows.slice(from, from + rowsAtOnce).map(withColumnNames)
    await client.query(statement, [JSON.stringify(batch)])
  }
}

function withColumnNames(row: object): Record<string, unknown> {
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [columnName(name), value]))
}

const columnNames = new Map([['baseOilViscosity40cMm2s', 'base_oil_viscosity_40c_mm2s']])

function columnName(field: string): string {
  const known = columnNames.get(field)
  if (known !== undefined) return known
  const column = field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
  columnNames.set(field, column)
  return column
}
