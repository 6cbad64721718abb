import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function devicePages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.device,
      component: lazyRouteComponent(() => import('./device-page.tsx'), 'DevicePage'),
    }),
  ]
}
