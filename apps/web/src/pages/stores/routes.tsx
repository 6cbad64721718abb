import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function storesPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.stores,
      component: lazyRouteComponent(() => import('./stores-page.tsx'), 'StoresPage'),
    }),
  ]
}
