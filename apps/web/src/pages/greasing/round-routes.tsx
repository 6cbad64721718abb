import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'

export function roundPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.rounds,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./rounds-page.tsx'), 'RoundsPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.newRound,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./round-form-page.tsx'), 'NewRoundPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.round,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./round-page.tsx'), 'RoundPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.changeRound,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./round-form-page.tsx'), 'ChangeRoundPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.walkRound,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./round-walk-page.tsx'), 'WalkRoundPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.roundWalk,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./round-walk-page.tsx'), 'RoundWalkPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.guns,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./guns-page.tsx'), 'GunsPage'),
    }),
  ]
}
