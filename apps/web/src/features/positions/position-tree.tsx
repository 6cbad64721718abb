import type { TreeArea } from '@shaftbook/contract/position-views'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useId } from 'react'
import type { z } from 'zod'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { MachineBranch } from './machine-branch.tsx'
import { OpenFlags } from './open-flags.tsx'
import { Fold } from './fold.tsx'
import { positionQueries } from './position-queries.ts'
import classes from './position-tree.module.css'

type Area = z.output<typeof TreeArea>

interface Branches {
  /** Codes of areas and tags of machines that are open. */
  open: ReadonlySet<string>
  onToggle: (branch: string) => void
}

/** The register as one walks the plant: areas, their machines, shafts, positions; each opened in turn. */
export function PositionTree({ areas, open, onToggle }: Branches & { areas: readonly Area[] }) {
  return (
    <ul className={classes.areas} aria-label="Areas in walking order">
      {areas.map((area) => (
        <AreaBranch key={area.id} area={area} open={open} onToggle={onToggle} />
      ))}
    </ul>
  )
}

function AreaBranch({ area, open, onToggle }: Branches & { area: Area }) {
  const isOpen = open.has(area.code)
  const partId = useId()
  return (
    <li className={classes.area}>
      <Fold isOpen={isOpen} controls={partId} onToggle={() => onToggle(area.code)}>
        <span className={classes.code}>{area.code}</span>
        <span className={classes.areaName}>{area.name}</span>
        <span className={classes.count}>{area.machines === 1 ? '1 machine' : `${area.machines} machines`}</span>
        <OpenFlags count={area.openFlags} />
      </Fold>
      <div id={partId} hidden={!isOpen}>
        {isOpen && <AreaMachines area={area} open={open} onToggle={onToggle} />}
      </div>
    </li>
  )
}

function AreaMachines({ area, open, onToggle }: Branches & { area: Area }) {
  const { code } = useSite()
  const machines = useInfiniteQuery(positionQueries.treeMachines(code, area.id))
  const { rows, more } = listed(machines)
  if (machines.isPending) return <LoadingRows what={`machines of ${area.name}`} rows={Math.min(6, area.machines)} />
  if (machines.isError)
    return <ErrorState heading="h2" problem={shownProblem(machines.error)} onRetry={() => void machines.refetch()} />
  if (rows.length === 0) return <p className={classes.none}>No machine stands in this area yet.</p>
  return (
    <>
      <ul className={classes.machines} aria-label={`Machines of ${area.name}`}>
        {rows.map((machine) => (
          <MachineBranch
            key={machine.id}
            machine={machine}
            isOpen={open.has(machine.tag)}
            onToggle={() => onToggle(machine.tag)}
          />
        ))}
      </ul>
      {more.hasMore && <TableFoot more={more} shown={rows.length} />}
    </>
  )
}
