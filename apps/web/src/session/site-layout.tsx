import { countFlags } from '@shaftbook/contract/flags'
import { signOut } from '@shaftbook/contract/access'
import { queryOptions, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query'
import { Outlet, useNavigate, useParams, useRouterState } from '@tanstack/react-router'
import { Suspense } from 'react'
import { call } from '../api/call.ts'
import { UnitsProvider } from '../lib/units.tsx'
import { destinationHrefs, paths } from '../paths.ts'
import { AppFrame } from '../ui/app-frame.tsx'
import { destinations } from '../ui/destinations.tsx'
import { EmptyState } from '../ui/empty-state.tsx'
import { LoadingRows } from '../ui/loading-rows.tsx'
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
  if (!access) {
    const [first] = me.memberships
    return (
      <EmptyState
        heading="h1"
        title={`There is no site "${code}" that you belong to`}
        text="Ask a manager of the site to let you in."
        action={first && <a href={paths.flags(first.siteCode)}>Go to {first.siteName}</a>}
      />
    )
  }
  return (
    <SiteProvider value={access}>
      <UnitsProvider personId={me.id}>
        <FramedSite access={access} />
      </UnitsProvider>
    </SiteProvider>
  )
}

function FramedSite({ access }: { access: SiteAccess }) {
  const { me, site, code } = access
  const navigate = useNavigate()
  const client = useQueryClient()
  const section = useRouterState({ select: (state) => state.location.pathname.split('/')[2] })
  const counts = useQuery(flagCountsQuery(code))

  const leave = async (): Promise<void> => {
    await call(signOut, {})
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
