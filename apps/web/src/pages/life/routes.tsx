import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'

export function lifePages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.life,
      component: lazyRouteComponent(() => import('./life-page.tsx'), 'LifePage'),
    }),
  ]
}
