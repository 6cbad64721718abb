import { Button } from '@mantine/core'
import type { RoundStop } from '@shaftbook/contract/rounds'
import { GreaseMark, greasePlaces } from '../../ui/grease-mark.tsx'
import type { SiteGrease } from './gun-choices.ts'
import type { WalkWork } from './use-walk.ts'
import type { GunInHand, Walk } from './walk-state.ts'
import classes from './walk.module.css'

interface WrongGunProps {
  stop: RoundStop
  gun: GunInHand
  work: WalkWork
  walk: Walk
  greases: readonly SiteGrease[]
}

/** Stops the dose: the grease in the gun is not the plan's. */
export function WrongGun({ stop, gun, work, walk, greases }: WrongGunProps) {
  const places = greasePlaces(greases)
  const loaded = greases.find(({ id }) => id === gun.greaseId)
  const right = work.guns.filter(({ greaseId }) => greaseId === stop.greaseId)
  const wanted = stop.greaseName ?? ''
  return (
    <div className={classes.stopped} role="alert">
      <p className={classes.stoppedTitle}>Stop: wrong grease for {stop.tag}</p>
      <dl className={classes.compare}>
        <div>
          <dt>In {gun.name}</dt>
          <dd>
            {loaded ? <GreaseMark name={loaded.name} place={places.get(loaded.id) ?? 0} /> : 'nobody has said what'}
          </dd>
        </div>
        <div>
          <dt>{stop.tag} takes</dt>
          <dd>
            <GreaseMark name={wanted} place={places.get(stop.greaseId ?? '') ?? 0} />
          </dd>
        </div>
      </dl>
      <p>Greases must not be mixed. Take another gun, or leave this stop open and tell the engineer.</p>
      <div className={classes.acts}>
        {right.map(({ id, name }) => (
          <Button key={id} size="touch" onClick={() => work.keep({ ...walk, gunId: id })}>
            Take {name}
          </Button>
        ))}
        {stop.greaseId !== null && (
          <Button size="touch" variant="default" onClick={() => void work.load(gun, stop.greaseId ?? '')}>
            {gun.name} is cleaned and loaded with {wanted}
          </Button>
        )}
      </div>
    </div>
  )
}
