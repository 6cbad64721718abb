import { changeSite } from '@shaftbook/contract/access'
import { useQuery } from '@tanstack/react-query'
import { shownProblem } from '../../api/shown-problem.ts'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { SiteForm } from '../../features/setup/site-form.tsx'
import { SiteRules } from '../../features/setup/site-rules.tsx'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'

/** The site and the settings that verdicts and due dates go by. */
export function SitePage() {
  const { code, may } = useSite()
  const site = useQuery(setupQueries.site(code))
  return (
    <>
      <PartHead title="Site and its rules" sentence="What verdicts and due dates go by at this site." />
      {site.isPending && <LoadingRows what="the site" />}
      {site.isError && <ErrorState problem={shownProblem(site.error)} onRetry={() => void site.refetch()} />}
      {site.data && (may(changeSite) ? <SiteForm site={site.data} /> : <SiteRules site={site.data} />)}
    </>
  )
}
