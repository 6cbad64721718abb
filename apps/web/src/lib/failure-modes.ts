import { failureModesTable } from '@shaftbook/standards/failure-modes.data'
import type { ModeNode } from '../ui/mode-tree-rows.ts'

/** The failure modes of ISO 15243 as the tree of the interface kit takes them. */
export const failureModes: readonly ModeNode[] = failureModesTable.rows
  .filter(({ parentClause }) => parentClause !== null)
  .map(({ clause, parentClause, term, signs, description }) => ({
    clause,
    term,
    parent: parentClause === '5' ? null : parentClause,
    signs: signs ?? description,
  }))
