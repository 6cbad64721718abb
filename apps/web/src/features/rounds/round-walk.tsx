import { Button, NativeSelect } from '@mantine/core'
import type { Gun } from '@shaftbook/contract/guns'
import type { Round } from '@shaftbook/contract/rounds'
import { useState } from 'react'
import { Caution } from '../../ui/caution.tsx'
import { gunChoices, type SiteGrease } from './gun-choices.ts'
import { stopsText } from './round-words.ts'
import { WalkStopScreen } from './walk-stop-screen.tsx'
import { WalkSummary } from './walk-summary.tsx'
import { useWalk } from './use-walk.ts'
import classes from './walk.module.css'

interface RoundWalkProps {
  round: Round
  guns: readonly Gun[]
  greases: readonly SiteGrease[]
  /** The list of rounds, to go to when it is over. */
  onClose: () => void
}

/** Walks a round: one stop a screen, then the summary. What is noted is on this device at once. */
export function RoundWalk({ round, guns, greases, onClose }: RoundWalkProps) {
  const work = useWalk(round, guns)
  const { walk } = work
  if (!walk) return <WalkStart round={round} guns={guns} onBegin={work.begin} trouble={work.trouble} />
  const stop = walk.endedAt === null ? walk.round.stops[walk.at] : undefined
  if (!stop) return <WalkSummary work={work} walk={walk} onClose={onClose} />
  return <WalkStopScreen key={stop.id} work={work} walk={walk} stop={stop} greases={greases} />
}

interface WalkStartProps {
  round: Round
  guns: readonly Gun[]
  onBegin: (gunId: string | null) => Promise<void>
  trouble: string | null
}

function WalkStart({ round, guns, onBegin, trouble }: WalkStartProps) {
  const [gunId, setGunId] = useState(guns[0]?.id ?? '')
  const [busy, setBusy] = useState(false)
  const begin = (): void => {
    setBusy(true)
    void onBegin(gunId || null).finally(() => setBusy(false))
  }
  return (
    <div className={classes.screen}>
      <p>
        {stopsText(round.stops.length)}, from {round.stops[0]?.tag} to {round.stops.at(-1)?.tag}.
      </p>
      {round.note && <p className={classes.note}>{round.note}</p>}
      <NativeSelect
        size="touch"
        label="Gun in your hand"
        description="Its strokes were weighed: doses are counted in them. You can change the gun at every stop."
        value={gunId}
        onChange={(event) => setGunId(event.currentTarget.value)}
        data={gunChoices(guns)}
      />
      <Caution title="Running shafts, hot housings, grease under pressure">
        Reach only what the site lets you reach while it runs. Wipe nipple and gun first, keep the relief open while you
        press, never hold the hose or nipple with your hand: grease under pressure goes through the skin.
      </Caution>
      {trouble && (
        <p className={classes.failed} role="alert">
          {trouble}
        </p>
      )}
      <Button size="touch" loading={busy} onClick={begin}>
        Start the round
      </Button>
    </div>
  )
}
