import { lockWashersTable, type LockWasherRow } from './lock-washers.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Lock washer by code, such as MB20 (DIN 5406). Its number of tabs is of low certainty: count the washer in the hand. */
export function washerByCode(washerCode: string): Lookup<LockWasherRow> {
  return lookUp(
    lockWashersTable,
    (row) => row.washerCode === washerCode,
    `There is no row for washer ${washerCode} in the table of lock washers; count its tabs.`,
  )
}
