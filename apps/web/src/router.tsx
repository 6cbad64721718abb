import type { QueryClient } from '@tanstack/react-query'
import {
  createRootRouteWithContext,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
  type AnyRoute,
} from '@tanstack/react-router'
import { ProblemError } from './api/problem-error.ts'
import { paths } from './paths.ts'
import { RouteError } from './pages/route-error.tsx'
import { LostPage } from './pages/not-found.tsx'
import { benchPages } from './pages/bench/routes.tsx'
import { devicePages } from './pages/device/routes.tsx'
import { flagPages } from './pages/flags/routes.tsx'
import { roundPages } from './pages/greasing/round-routes.tsx'
import { greasingPages } from './pages/greasing/routes.tsx'
import { lifePages } from './pages/life/routes.tsx'
import { mountPages } from './pages/mounts/routes.tsx'
import { positionPages } from './pages/positions/routes.tsx'
import { scanPages } from './pages/scan/routes.tsx'
import { setupPages } from './pages/setup/routes.tsx'
import { storesPages } from './pages/stores/routes.tsx'
import { payOwedSignOut } from './offline/sender.ts'
import { settleDevice } from './session/device-session.ts'
import { sessionQuery } from './session/session-queries.ts'
import { NotMember, SiteLayout } from './session/site-layout.tsx'

const rootRoute = createRootRouteWithContext<{ client: QueryClient }>()({
  component: Outlet,
  notFoundComponent: LostPage,
  errorComponent: RouteError,
})

/** Reads who is signed in, or leads to the sign-in page and back. */
async function requireSession(client: QueryClient, next: string) {
  // a session that was left without a network ends before anybody gets in by it
  if (!(await payOwedSignOut())) throw redirect({ to: paths.signIn, search: { next } })
  try {
    const me = await client.ensureQueryData(sessionQuery)
    await settleDevice(me)
    return me
  } catch (error) {
    if (error instanceof ProblemError && error.problem.status === 401)
      throw redirect({ to: paths.signIn, search: { next } })
    throw error
  }
}

const homeRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: paths.home,
  beforeLoad: async ({ context, location }) => {
    const me = await requireSession(context.client, location.href)
    const [first] = me.memberships
    if (first) throw redirect({ href: paths.flags(first.siteCode) })
    return { me }
  },
  component: HomeWithoutSite,
})

function HomeWithoutSite() {
  const { me } = homeRoute.useRouteContext()
  return <NotMember me={me} />
}

const signInRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: paths.signIn,
  validateSearch: (search): { next?: string } => (typeof search['next'] === 'string' ? { next: search['next'] } : {}),
  component: lazyRouteComponent(() => import('./session/sign-in-page.tsx'), 'SignInPage'),
})

export const siteRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/$site',
  beforeLoad: ({ context, location }) => requireSession(context.client, location.href),
  component: SiteLayout,
})

// The component gallery is for developers: a production build leaves it out.
const developerRoutes = import.meta.env.DEV
  ? [
      createRoute({
        getParentRoute: () => rootRoute,
        path: paths.gallery,
        component: lazyRouteComponent(() => import('./gallery/gallery.tsx'), 'Gallery'),
      }),
    ]
  : []

const sitePages = [
  flagPages,
  positionPages,
  scanPages,
  mountPages,
  greasingPages,
  roundPages,
  storesPages,
  lifePages,
  benchPages,
  setupPages,
  devicePages,
]

export function makeRouter(client: QueryClient) {
  return createRouter({
    routeTree: rootRoute.addChildren([
      homeRoute,
      signInRoute,
      ...developerRoutes,
      siteRoute.addChildren(sitePages.flatMap((pages): AnyRoute[] => pages(() => siteRoute))),
    ]),
    context: { client },
    defaultPreload: 'intent',
    defaultPreloadStaleTime: 0,
    scrollRestoration: true,
  })
}
