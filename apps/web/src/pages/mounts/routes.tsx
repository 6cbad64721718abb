import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function mountPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.mounts,
      component: lazyRouteComponent(() => import('./mounts-page.tsx'), 'MountsPage'),
    }),
  ]
}
