import { failureModesTable, type FailureModeRow } from './failure-modes.data.ts'
import { lookUp, type Lookup } from './table.ts'

export interface FailureModeNode {
  readonly mode: FailureModeRow
  readonly children: readonly FailureModeNode[]
}

/** A failure mode by its clause, such as 5.3.3.2 (ISO 15243:2017; rows that only the 2004 edition has say so). */
export function failureModeByClause(clause: string): Lookup<FailureModeRow> {
  return lookUp(failureModesTable, (row) => row.clause === clause, `ISO 15243 has no clause ${clause} in our tree.`)
}

/** The tree of failure modes, from the six groups 5.1 to 5.6 down, in the order of the clauses (ISO 15243). */
export function failureModeTree(): readonly FailureModeNode[] {
  return childrenOf('5')
}

function childrenOf(clause: string): FailureModeNode[] {
  return failureModesTable.rows
    .filter((row) => row.parentClause === clause)
    .map((mode) => ({ mode, children: childrenOf(mode.clause) }))
}
