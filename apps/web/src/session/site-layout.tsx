import { countFlags } from '@shaftbook/contract/flags'
import type { Me } from '@shaftbook/contract/access'
import { createMount } from '@shaftbook/contract/mounts'
import { queryOptions, useQuery, useSuspenseQuery } from '@tanstack/react-query'
import { Outlet, useNavigate, useParams, useRouterState } from '@tanstack/react-router'
import { Suspense, useEffect } from 'react'
import { call } from '../api/call.ts'
import { UnitsProvider } from '../lib/units.tsx'
import { keepFresh } from '../offline/keeping.ts'
import { useDeviceState, useOutbox } from '../offline/use-device.ts'
import { destinationHrefs, paths } from '../paths.ts'
import { AppFrame } from '../ui/app-frame.tsx'
import { DeviceMark } from '../ui/device-mark.tsx'
import { destinations } from '../ui/destinations.tsx'
import { EmptyState } from '../ui/empty-state.tsx'
import { AppLink } from '../ui/link.tsx'
import { LoadingRows } from '../ui/loading-rows.tsx'
import { PageTitle } from '../ui/page-title.tsx'
import { PlainPage } from '../ui/plain-page.tsx'
import { DeviceBanner } from './device-banner.tsx'
import { sessionQuery } from './session-queries.ts'
import { siteAccess, SiteProvider, type SiteAccess } from './site-access.tsx'
import { useLeaving } from './use-leaving.tsx'

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
  const { me, site, code, may } = access
  const navigate = useNavigate()
  const section = useRouterState({ select: (state) => state.location.pathname.split('/')[2] })
  const counts = useQuery(flagCountsQuery(code))
  const { silent, phase } = useDeviceState()
  const outbox = useOutbox(me.id)
  const refused = outbox.filter(({ state }) => state === 'refused').length
  const waiting = outbox.filter(({ state }) => state === 'waiting').length
  const leaving = useLeaving(refused + waiting)
  const planned = site.role === 'technician' && may(createMount)
  useEffect(() => keepFresh(code, { planned }), [code, planned])

  const toSite = (siteId: string): void => {
    const next = me.memberships.find((membership) => membership.siteId === siteId)
    if (next) void navigate({ to: paths.flags(next.siteCode) })
  }
  const mark = { href: paths.device(code), active: section === 'device', silent, waiting, refused }
  return (
    <AppFrame
      hrefs={destinationHrefs(code)}
      active={destinations.find(({ key }) => key === section)?.key ?? null}
      flagCount={counts.data?.open}
      sites={me.memberships.map(({ siteId, siteName }) => ({ id: siteId, name: siteName }))}
      siteId={site.siteId}
      onSite={toSite}
      person={{ name: me.name, role: site.role }}
      onSignOut={leaving.ask}
      device={<DeviceMark {...mark} />}
      banner={<DeviceBanner access={access} signInAgain={phase === 'sign-in'} silent={silent} />}
    >
      <Suspense fallback={<LoadingRows what="the page" />}>
        <Outlet />
      </Suspense>
      {leaving.question}
    </AppFrame>
  )
}
