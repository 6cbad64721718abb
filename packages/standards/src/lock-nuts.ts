import { lockNutsTable, type LockNutRow } from './lock-nuts.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Lock nut by code, such as KM20 or HM3044 (DIN 981 / ISO 2982-2) or AN20 (inch, ANSI/ABMA 8.2). */
export function nutByCode(nutCode: string): Lookup<LockNutRow> {
  return lookUp(
    lockNutsTable,
    (row) => row.nutCode === nutCode,
    `There is no row for nut ${nutCode} in the table of lock nuts; read thread and pitch from the part.`,
  )
}
