import { startRoundWalk } from '@shaftbook/contract/round-walks'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { roundQueries } from '../../features/rounds/round-queries.ts'
import { RoundWalk } from '../../features/rounds/round-walk.tsx'
import { WalkResults } from '../../features/rounds/walk-results.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'

/** Walks a round, stop by stop. */
export function WalkRoundPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const navigate = useNavigate()
  const { data: round } = useSuspenseQuery(roundQueries.round(code, id))
  const { data: guns } = useSuspenseQuery(roundQueries.guns(code))
  const { data: greases } = useSuspenseQuery(roundQueries.greases(code))
  if (!may(startRoundWalk))
    return (
      <EmptyState
        heading="h1"
        title="Rounds are walked by who works at the shaft"
        text="You can read the round."
        action={<AppLink href={paths.round(code, id)}>{round.name}</AppLink>}
      />
    )
  return (
    <>
      <PageHead title={round.name} trail={[{ label: 'Rounds', href: paths.rounds(code) }]} />
      <RoundWalk
        key={id}
        round={round}
        guns={guns.items}
        greases={greases.items}
        onClose={() => void navigate({ href: paths.round(code, id) })}
      />
    </>
  )
}

/** One walk that is in the book: what was done at each stop, and what was left open. */
export function RoundWalkPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, site } = useSite()
  const { data: walk } = useSuspenseQuery(roundQueries.walk(code, id))
  return (
    <>
      <PageHead
        title={`Walk of ${walk.roundName}`}
        sentence={walk.note || undefined}
        trail={[
          { label: 'Rounds', href: paths.rounds(code) },
          { label: walk.roundName, href: paths.round(code, walk.roundId) },
        ]}
        facts={[
          { label: 'Begun', value: <Timestamp at={walk.startedAt} timeZone={site.timeZone} /> },
          { label: 'By', value: walk.startedBy },
          {
            label: 'Ended',
            value: walk.endedAt ? <Timestamp at={walk.endedAt} timeZone={site.timeZone} /> : 'goes on',
          },
          { label: 'Left open', value: walk.stops.filter(({ result }) => result === null).length },
        ]}
      />
      <WalkResults walk={walk} />
    </>
  )
}
