import { useQuery } from '@tanstack/react-query'
import { shownProblem } from '../../api/shown-problem.ts'
import { CalendarLinks } from '../../features/greasing-mail/calendar-links.tsx'
import { DigestForm } from '../../features/greasing-mail/digest-form.tsx'
import { mailQueries } from '../../features/greasing-mail/mail-queries.ts'
import { MakeLink } from '../../features/greasing-mail/make-link.tsx'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { GreasingNav } from './greasing-nav.tsx'

/** Where a person lets what is due come by calendar and by mail. */
export function GreasingMailPage() {
  const { code } = useSite()
  const areas = useQuery(mailQueries.areas(code))
  const rounds = useQuery(mailQueries.rounds(code))
  const digest = useQuery(mailQueries.digest(code))
  const known = areas.data?.items ?? []
  return (
    <>
      <PageHead
        title="Calendar and mail"
        sentence="What is due, in your own calendar and by mail. Both are yours alone; nobody else sees or changes them."
      />
      <GreasingNav active="mail" />
      <PagePart title="Calendar links">
        <MakeLink areas={known} rounds={rounds.data?.items ?? []} />
        <CalendarLinks />
      </PagePart>
      <PagePart title="Mail of what is due">
        {digest.isPending && <LoadingRows what="your mail" rows={3} />}
        {digest.isError && (
          <ErrorState heading="h3" problem={shownProblem(digest.error)} onRetry={() => void digest.refetch()} />
        )}
        {digest.data && <DigestForm digest={digest.data} areas={known} />}
      </PagePart>
    </>
  )
}
