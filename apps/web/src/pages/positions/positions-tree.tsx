import { useQuery } from '@tanstack/react-query'
import { shownProblem } from '../../api/shown-problem.ts'
import { openBranches, toggledBranch } from '../../features/positions/open-branches.ts'
import { positionQueries } from '../../features/positions/position-queries.ts'
import { PositionTree } from '../../features/positions/position-tree.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { NoPositions } from './positions-table.tsx'

/** The positions as a tree; what is open stands in the address. */
export function PositionsTree({ openText }: { openText: string | undefined }) {
  const { code } = useSite()
  const change = useSearchChange()
  const tree = useQuery(positionQueries.treeAreas(code))
  const open = openBranches(openText)
  if (tree.isPending) return <LoadingRows what="areas" />
  if (tree.isError) return <ErrorState problem={shownProblem(tree.error)} onRetry={() => void tree.refetch()} />
  if (tree.data.areas.length === 0) return <NoPositions />
  return (
    <PositionTree
      areas={tree.data.areas}
      open={open}
      onToggle={(branch) => change({ open: toggledBranch(open, branch) })}
    />
  )
}
