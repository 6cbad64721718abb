import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function setupPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.setup,
      component: lazyRouteComponent(() => import('./setup-page.tsx'), 'SetupPage'),
    }),
  ]
}
