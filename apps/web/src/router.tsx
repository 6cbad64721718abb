import { createRootRoute, createRoute, createRouter, lazyRouteComponent, Outlet } from '@tanstack/react-router'
import { paths } from './paths.ts'
import { NotFoundPage } from './pages/not-found.tsx'

const rootRoute = createRootRoute({ component: Outlet, notFoundComponent: NotFoundPage })

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

export const router = createRouter({
  routeTree: rootRoute.addChildren([...developerRoutes]),
  defaultPreload: 'intent',
  scrollRestoration: true,
})

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
