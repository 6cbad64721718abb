export interface ModeNode {
  /** Clause of ISO 15243, such as "5.2.2". */
  clause: string
  term: string
  /** Clause of the branch above; null at the first level. */
  parent: string | null
  /** What the mechanic sees. */
  signs: string
}

export interface ModeRow {
  node: ModeNode
  depth: number
  hasChildren: boolean
  isOpen: boolean
}

interface ModeView {
  search: string
  open: ReadonlySet<string>
  chosen: string | null
}

/**
 * The rows of the mode tree in view: the first level, the branches that are open, and the way to the chosen mode. While a
 * search is typed, every mode that has all its words in term, clause or signs, with the branches above it.
 */
export function modeRows(nodes: readonly ModeNode[], { search, open, chosen }: ModeView): ModeRow[] {
  const byClause = new Map(nodes.map((node) => [node.clause, node]))
  const words = search.toLowerCase().split(/\s+/).filter(Boolean)
  const found =
    words.length > 0
      ? withBranches(
          nodes.filter((node) => hasWords(node, words)),
          byClause,
        )
      : null
  const way = chosen === null ? new Set<string>() : branchesAbove(chosen, byClause)
  const rows: ModeRow[] = []

  const addLevel = (parent: string | null, depth: number) => {
    for (const node of nodes) {
      const isTop = node.parent === null || !byClause.has(node.parent)
      if (parent === null ? !isTop : node.parent !== parent) continue
      if (found && !found.has(node.clause)) continue
      const hasChildren = nodes.some((other) => other.parent === node.clause)
      const isOpen = hasChildren && (found !== null || open.has(node.clause) || way.has(node.clause))
      rows.push({ node, depth, hasChildren, isOpen })
      if (isOpen) addLevel(node.clause, depth + 1)
    }
  }
  addLevel(null, 0)
  return rows
}

function hasWords(node: ModeNode, words: string[]): boolean {
  const text = `${node.term} ${node.clause} ${node.signs}`.toLowerCase()
  return words.every((word) => text.includes(word))
}

function branchesAbove(clause: string, byClause: ReadonlyMap<string, ModeNode>): Set<string> {
  const above = new Set<string>()
  for (let parent = byClause.get(clause)?.parent; parent && !above.has(parent); parent = byClause.get(parent)?.parent)
    above.add(parent)
  return above
}

function withBranches(found: ModeNode[], byClause: ReadonlyMap<string, ModeNode>): Set<string> {
  return new Set(found.flatMap(({ clause }) => [clause, ...branchesAbove(clause, byClause)]))
}
