import { Button } from '@mantine/core'
import { machines } from '@shaftbook/contract/register-tables'
import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useNavigate, useSearch } from '@tanstack/react-router'
import { MachinePositions } from '../../features/positions/machine-positions.tsx'
import { openHit } from '../../features/positions/open-hit.ts'
import { PositionFilters } from '../../features/positions/position-filters.tsx'
import { positionQueries } from '../../features/positions/position-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'
import { PositionsTable } from './positions-table.tsx'
import { PositionsTree } from './positions-tree.tsx'
import type { PositionsSearch } from './positions-search.ts'

/** The register: every shaft position of the site, as a tree or as a table. */
export function PositionsPage() {
  const { code, may } = useSite()
  const search: PositionsSearch = useSearch({ strict: false })
  const { view = 'tree', q, area, machine, verdict, due } = search
  const change = useSearchChange()
  const navigate = useNavigate()
  const client = useQueryClient()
  const areas = useQuery(positionQueries.areas(code))
  const narrowedTo = useQuery({ ...positionQueries.machine(code, machine ?? ''), enabled: machine !== undefined })
  const machineName = narrowedTo.data && `${narrowedTo.data.tag} ${narrowedTo.data.name}`
  // A search is answered by a list: the tree opens places, it does not find them.
  const shown = view === 'table' || q !== undefined ? 'table' : machine ? 'machine' : 'tree'
  const enter = async (text: string) => {
    change({ q: text || undefined })
    const hit = text && (await openHit(client, code, { ...search, q: text }))
    if (hit) await navigate({ to: paths.position(code, hit) })
  }
  const viewHref = (to: string) => `${paths.positions(code)}${to === 'table' ? '?view=table' : ''}`
  return (
    <>
      <PageHead
        title="Positions"
        sentence={
          machine === undefined
            ? 'Every place on every shaft that takes a bearing, and what stands there today.'
            : `What stands on the shafts of ${machineName ?? 'this machine'}.`
        }
        actions={
          <>
            {machine !== undefined && may(machines.change) && (
              <Button component={AppLink} href={paths.place(code, 'machine', machine)} variant="subtle">
                Machine in the setup
              </Button>
            )}
            <Button component={AppLink} href={paths.labels(code)} variant="default">
              Labels
            </Button>
            <Button component={AppLink} href={paths.scan(code)} variant="default">
              Scan a label
            </Button>
          </>
        }
      />
      <SectionNav
        label="Positions as"
        active={shown === 'table' ? 'table' : 'tree'}
        places={[
          { key: 'tree', label: 'Tree', href: viewHref('tree') },
          { key: 'table', label: 'Table', href: viewHref('table') },
        ]}
      />
      <PositionFilters
        values={{ q, area, machine, verdict, due }}
        onChange={change}
        onEnter={(text) => void enter(text)}
        areas={areas.data?.items ?? []}
        machineName={machineName}
        choices={shown === 'table'}
        result={undefined}
      />
      {shown === 'table' && <PositionsTable search={search} />}
      {shown === 'machine' && <MachinePositions machineId={machine!} machineName={machineName ?? 'the machine'} />}
      {shown === 'tree' && <PositionsTree openText={search.open} />}
    </>
  )
}
