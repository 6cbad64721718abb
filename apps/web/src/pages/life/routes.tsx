import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'
import { lifeSearch } from './life-search.ts'

export function lifePages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.life,
      validateSearch: (search) => lifeSearch.parse(search),
      component: lazyRouteComponent(() => import('./life-page.tsx'), 'LifePage'),
    }),
  ]
}
