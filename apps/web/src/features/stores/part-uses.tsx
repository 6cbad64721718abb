import type { PartUse } from '@shaftbook/contract/kits'
import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { storesQueries } from './stores-queries.ts'

/** The positions that a part fits, through their kits. */
export function PartUses({ partId, designation }: { partId: string; designation: string }) {
  const { code } = useSite()
  const uses = useInfiniteQuery(storesQueries.uses(code, partId))
  const { rows, more } = listed(uses)
  if (uses.isPending) return <LoadingRows what="positions" />
  if (uses.isError) return <ErrorState problem={shownProblem(uses.error)} onRetry={() => void uses.refetch()} />
  return (
    <DataTable<PartUse>
      caption={`Positions that ${designation} fits`}
      columns={columnsAt(code)}
      rows={rows}
      rowKey={({ positionId, kitId, need, quantity }) => `${positionId} ${kitId} ${need} ${quantity}`}
      rowHref={({ positionId }) => paths.position(code, positionId)}
      more={more}
      empty={
        <EmptyState
          heading="h3"
          title="It stands in no kit of a position"
          text="A part fits a position when a line of the position's kit names it."
        />
      }
    />
  )
}

function columnsAt(site: string): readonly DataColumn<PartUse>[] {
  return [
    { key: 'tag', header: 'Position', cell: ({ tag }) => tag, phone: 'title' },
    { key: 'machine', header: 'Machine', cell: ({ machineName, areaName }) => `${machineName}, ${areaName}` },
    {
      key: 'quantity',
      header: 'Takes',
      align: 'right',
      cell: ({ quantity, unit }) => `${quantity} ${unit}`,
      phone: 'aside',
    },
    { key: 'need', header: 'Need', cell: ({ need }) => need },
    {
      key: 'kit',
      header: 'Kit',
      cell: ({ kitId, kitName }) => <AppLink href={paths.kit(site, kitId)}>{kitName}</AppLink>,
    },
  ]
}
