import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function greasingPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.greasing,
      component: lazyRouteComponent(() => import('./greasing-page.tsx'), 'GreasingPage'),
    }),
  ]
}
