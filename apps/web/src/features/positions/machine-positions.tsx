import type { PositionListItem } from '@shaftbook/contract/position-views'
import { useQuery } from '@tanstack/react-query'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { positionQueries } from './position-queries.ts'
import { ShaftList, type ShownShaft } from './shaft-list.tsx'

/** The shafts of one machine with their positions. */
export function MachinePositions({ machineId, machineName }: { machineId: string; machineName: string }) {
  const { code } = useSite()
  const board = useQuery(positionQueries.machineBoard(code, machineId))
  if (board.isPending) return <LoadingRows what="positions" rows={4} />
  if (board.isError) return <ErrorState problem={shownProblem(board.error)} onRetry={() => void board.refetch()} />
  if (board.data.items.length === 0)
    return <EmptyState title="This machine has no position yet" text="An engineer enters its shafts and positions." />
  return <ShaftList shafts={shaftsOf(board.data.items)} machineName={machineName} />
}

/** Positions by their shaft, retired ones left out. */
function shaftsOf(items: readonly PositionListItem[]): ShownShaft[] {
  const inUse = items.filter(({ retired }) => !retired)
  return [...Map.groupBy(inUse, ({ shaftId }) => shaftId)].map(([id, positions]) => ({
    id,
    name: positions[0]?.shaftName ?? '',
    positions,
  }))
}
