import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { HitList } from './hit-list.tsx'
import { storesQueries } from './stores-queries.ts'

/** The positions that take a kit; each leads to its pick list. */
export function KitPositions({ kitId }: { kitId: string }) {
  const { code } = useSite()
  const positions = useInfiniteQuery(storesQueries.kitPositions(code, kitId))
  const { rows, more } = listed(positions)
  if (positions.isPending) return <LoadingRows what="positions" rows={3} />
  if (positions.isError)
    return <ErrorState heading="h3" problem={shownProblem(positions.error)} onRetry={() => void positions.refetch()} />
  if (rows.length === 0)
    return (
      <EmptyState
        heading="h3"
        title="No position takes this kit"
        text="An engineer chooses the kit when editing a position."
      />
    )
  const hits = rows.map(({ id, tag, name, locating, retiredAt }) => ({
    id,
    href: paths.pickList(code, id),
    name: tag,
    about: [name, locating ? 'locating' : 'non-locating', retiredAt && 'retired'].filter(Boolean).join(', '),
  }))
  return (
    <>
      <HitList label="Positions that take this kit" hits={hits} />
      <TableFoot more={more} shown={rows.length} />
    </>
  )
}
