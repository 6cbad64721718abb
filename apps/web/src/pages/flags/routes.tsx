import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'
import { flagsSearch } from './flags-search.ts'

export function flagPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.flags,
      validateSearch: (search) => flagsSearch.parse(search),
      component: lazyRouteComponent(() => import('./flags-page.tsx'), 'FlagsPage'),
    }),
  ]
}
