import type { TreeMachine } from '@shaftbook/contract/position-views'
import { useId } from 'react'
import { Fold } from './fold.tsx'
import { OpenFlags } from './open-flags.tsx'
import classes from './position-tree.module.css'
import { ShaftList } from './shaft-list.tsx'

interface MachineBranchProps {
  machine: TreeMachine
  isOpen: boolean
  onToggle: () => void
}

/** A machine of the tree with its shafts. */
export function MachineBranch({ machine, isOpen, onToggle }: MachineBranchProps) {
  const partId = useId()
  const positions = machine.shafts.flatMap((shaft) => shaft.positions)
  const flags = positions.reduce((sum, { openFlags }) => sum + openFlags, 0)
  return (
    <li className={classes.machine}>
      <Fold isOpen={isOpen} controls={partId} onToggle={onToggle}>
        <span className={classes.tag}>{machine.tag}</span>
        <span className={classes.machineName}>
          {machine.name}
          {machine.standby && ', stands by'}
        </span>
        <span className={classes.count}>{positions.length === 1 ? '1 position' : `${positions.length} positions`}</span>
        <OpenFlags count={flags} />
      </Fold>
      <div id={partId} hidden={!isOpen}>
        {isOpen && <ShaftList shafts={machine.shafts} machineName={machine.name} />}
      </div>
    </li>
  )
}
