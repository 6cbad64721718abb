import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'
import { positionsSearch } from './positions-search.ts'

export function positionPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.positions,
      validateSearch: (search) => positionsSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./positions-page.tsx'), 'PositionsPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.position,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./position-page.tsx'), 'PositionPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.remove,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./removal-page.tsx'), 'RemovalPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.removalCorrection,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./removal-correction-page.tsx'), 'RemovalCorrectionPage'),
    }),
  ]
}
