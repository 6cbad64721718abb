import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'
import { greasingSearch } from './greasing-search.ts'

export function greasingPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.greasing,
      validateSearch: (search) => greasingSearch.parse(search),
      component: lazyRouteComponent(() => import('./greasing-page.tsx'), 'GreasingPage'),
    }),
  ]
}
