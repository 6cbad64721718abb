import type { TreeMachine } from '@shaftbook/contract/position-views'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { OpenFlags } from './open-flags.tsx'
import classes from './position-tree.module.css'

export type ShaftPosition = TreeMachine['shafts'][number]['positions'][number]
export interface ShownShaft {
  id: string
  name: string
  positions: readonly ShaftPosition[]
}

/** The shafts of a machine, each with its positions strung on it. */
export function ShaftList({ shafts, machineName }: { shafts: readonly ShownShaft[]; machineName: string }) {
  if (shafts.length === 0) return <p className={classes.none}>No shaft is registered for this machine yet.</p>
  return (
    <ul className={classes.shafts} aria-label={`Shafts of ${machineName}`}>
      {shafts.map((shaft) => (
        <li key={shaft.id} className={classes.shaft}>
          <p className={classes.shaftName}>
            {shaft.name}
            <span className={classes.held}> {heldWords(shaft.positions)}</span>
          </p>
          {shaft.positions.length === 0 ? (
            <p className={classes.none}>No position on this shaft yet.</p>
          ) : (
            <ul className={classes.positions} aria-label={`Positions on the ${shaft.name.toLowerCase()}`}>
              {shaft.positions.map((position) => (
                <PositionLine key={position.id} position={position} />
              ))}
            </ul>
          )}
        </li>
      ))}
    </ul>
  )
}

function PositionLine({ position }: { position: ShaftPosition }) {
  const { code } = useSite()
  const { id, tag, name, locating, designation, verdict, openFlags } = position
  return (
    <li className={classes.position}>
      <SeatShape locating={locating} />
      <AppLink href={paths.position(code, id)} className={classes.tag}>
        {tag}
      </AppLink>
      <span className={classes.name}>
        {name}, {locating ? 'locating' : 'non-locating'}
      </span>
      <span className={classes.bearing}>{designation}</span>
      <span className={classes.verdict}>
        {verdict ? <VerdictMark verdict={verdict} size="s" /> : <span className={classes.soft}>no verdict</span>}
      </span>
      <span className={classes.flagged}>
        <OpenFlags count={openFlags} />
      </span>
    </li>
  )
}

/** A bearing on its shaft line: held between two rings where it locates, free where it slides. */
function SeatShape({ locating }: { locating: boolean }) {
  return (
    <svg viewBox="0 0 24 20" width="24" height="20" aria-hidden="true" focusable="false" className={classes.seat}>
      <path d="M0 10h24" />
      <rect x="8" y="4" width="8" height="12" />
      {locating && <path d="M6 3v14M18 3v14" />}
    </svg>
  )
}

function heldWords(positions: readonly ShaftPosition[]): string {
  const locating = positions.filter((position) => position.locating).length
  if (positions.length === 0 || locating === 1) return ''
  return locating === 0 ? 'no locating position' : `${locating} locating positions`
}
