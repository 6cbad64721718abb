import { changeRound, createRound, type Round } from '@shaftbook/contract/rounds'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { RoundForm } from '../../features/rounds/round-form.tsx'
import { roundQueries } from '../../features/rounds/round-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PageHead } from '../../ui/page-head.tsx'

/** Makes a round. */
export function NewRoundPage() {
  const { code, may } = useSite()
  const saved = useSaved('made')
  if (!may(createRound)) return <NotYours />
  return (
    <>
      <PageHead
        title="Make a round"
        sentence="Add positions by area, grease and tag, then put them in the order in which they are walked."
        trail={[{ label: 'Rounds', href: paths.rounds(code) }]}
      />
      <RoundForm backHref={paths.rounds(code)} onSaved={saved} />
    </>
  )
}

/** Changes a round. */
export function ChangeRoundPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const { data: round } = useSuspenseQuery(roundQueries.round(code, id))
  const saved = useSaved('changed')
  if (!may(changeRound)) return <NotYours />
  return (
    <>
      <PageHead
        title={`Change ${round.name}`}
        sentence="A walk that is under way keeps the stops that it began with."
        trail={[
          { label: 'Rounds', href: paths.rounds(code) },
          { label: round.name, href: paths.round(code, id) },
        ]}
      />
      <RoundForm key={round.version} round={round} backHref={paths.round(code, id)} onSaved={saved} />
    </>
  )
}

function useSaved(how: 'made' | 'changed') {
  const { code } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  return (round: Round): void => {
    notice.done(`The round ${round.name} is ${how}.`)
    void navigate({ href: paths.round(code, round.id), ignoreBlocker: true })
  }
}

function NotYours() {
  const { code } = useSite()
  return (
    <EmptyState
      heading="h1"
      title="Rounds are made by an engineer or a manager"
      text="You can read them and walk them."
      action={<AppLink href={paths.rounds(code)}>Rounds</AppLink>}
    />
  )
}
