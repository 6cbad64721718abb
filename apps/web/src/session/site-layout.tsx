import { countFlags } from '@shaftbook/contract/flags'
import { signOut, type Me } from '@shaftbook/contract/access'
import { queryOptions, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query'
import { Outlet, useNavigate, useParams, useRouterState } from '@tanstack/react-router'
import { Suspense } from 'react'
import { call } from '../api/call.ts'
import { ProblemError } from '../api/problem-error.ts'
import { shownProblem } from '../api/shown-problem.ts'
import { UnitsProvider } from '../lib/units.tsx'
import { destinationHrefs, paths } from '../paths.ts'
import { AppFrame } from '../ui/app-frame.tsx'
import { destinations } from '../ui/destinations.tsx'
import { EmptyState } from '../ui/empty-state.tsx'
import { AppLink } from '../ui/link.tsx'
import { LoadingRows } from '../ui/loading-rows.tsx'
import { useNotice } from '../ui/notice.tsx'
import { PageTitle } from '../ui/page-title.tsx'
import { PlainPage } from '../ui/plain-page.tsx'
import { sessionQuery } from './session-queries.ts'
import { siteAccess, SiteProvider, type SiteAccess } from './site-access.tsx'

/** Open flags by kind; every page shows their number. */
export const flagCountsQuery = (site: string) =>
  queryOptions({
    queryKey: ['flags', site, 'counts'],
    queryFn: ({ signal }) => call(countFlags, { params: { site } }, signal),
  })

/** The frame of all pages of a site. */
export function SiteLayout() {
  const { site: code = '' }: { site?: string } = useParams({ strict: false })
  const { data: me } = useSuspenseQuery(sessionQuery)
  const access = siteAccess(me, code)
  if (!access) return <NotMember me={me} code={code} />
  return (
    <SiteProvider value={access}>
      <UnitsProvider personId={me.id}>
        <FramedSite access={access} />
      </UnitsProvider>
    </SiteProvider>
  )
}

/** Somebody who belongs to no site, or not to this one. */
export function NotMember({ me, code }: { me: Me; code?: string }) {
  const [first] = me.memberships
  return (
    <PlainPage>
      <PageTitle title="No such site" />
      <EmptyState
        heading="h1"
        title={code === undefined ? 'You belong to no site yet' : `There is no site "${code}" that you belong to`}
        text="Ask a manager of the site to let you in."
        action={first && <AppLink href={paths.flags(first.siteCode)}>Go to {first.siteName}</AppLink>}
      />
    </PlainPage>
  )
}

function FramedSite({ access }: { access: SiteAccess }) {
  const { me, site, code } = access
  const navigate = useNavigate()
  const client = useQueryClient()
  const notice = useNotice()
  const section = useRouterState({ select: (state) => state.location.pathname.split('/')[2] })
  const counts = useQuery(flagCountsQuery(code))

  const leave = async (): Promise<void> => {
    try {
      await call(signOut, {})
    } catch (error) {
      // a session that is over already needs no end
      if (!(error instanceof ProblemError && error.problem.status === 401)) {
        notice.failed(shownProblem(error).detail)
        return
      }
    }
    client.clear()
    await navigate({ to: paths.signIn })
  }
  const toSite = (siteId: string): void => {
    const next = me.memberships.find((membership) => membership.siteId === siteId)
    if (next) void navigate({ to: paths.flags(next.siteCode) })
  }
  return (
    <AppFrame
      hrefs={destinationHrefs(code)}
      active={destinations.find(({ key }) => key === section)?.key ?? null}
      flagCount={counts.data?.open}
      sites={me.memberships.map(({ siteId, siteName }) => ({ id: siteId, name: siteName }))}
      siteId={site.siteId}
      onSite={toSite}
      person={{ name: me.name, role: site.role }}
      onSignOut={() => void leave()}
    >
      <Suspense fallback={<LoadingRows what="the page" />}>
        <Outlet />
      </Suspense>
    </AppFrame>
  )
}
