import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function positionPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.positions,
      component: lazyRouteComponent(() => import('./positions-page.tsx'), 'PositionsPage'),
    }),
  ]
}
