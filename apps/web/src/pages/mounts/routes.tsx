import type { QueryClient } from '@tanstack/react-query'
import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { askForSheet } from '../../features/mounts/mount-queries.ts'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'
import { mountsSearch } from './mounts-search.ts'
import { sheetSearch } from './sheet-search.ts'

export function mountPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.mounts,
      validateSearch: (search) => mountsSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./mounts-page.tsx'), 'MountsPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.mount,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./mount-page.tsx'), 'MountPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.plannedMounts,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./planned-page.tsx'), 'PlannedMountsPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.plannedMount,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./plan-page.tsx'), 'PlannedMountPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.planMount,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./plan-page.tsx'), 'PlanMountPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.mountDraft,
      validateSearch: (search) => sheetSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./mount-sheet-page.tsx'), 'MountDraftPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.mountCorrection,
      validateSearch: (search) => sheetSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./mount-sheet-page.tsx'), 'MountCorrectionPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.remount,
      validateSearch: (search) => sheetSearch.parse(search),
      loader: ({ context, params }) => {
        const { client } = context as { client: QueryClient }
        const { site, id } = params as { site: string; id: string }
        askForSheet(client, site, id)
      },
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./remount-page.tsx'), 'RemountPage'),
    }),
  ]
}
