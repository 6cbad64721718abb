import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'
import { greasingSearch } from './greasing-search.ts'
import { aheadSearch, complianceSearch } from './reports-search.ts'

export function greasingPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.greasing,
      validateSearch: (search) => greasingSearch.parse(search),
      component: lazyRouteComponent(() => import('./greasing-page.tsx'), 'GreasingPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.greasingAhead,
      validateSearch: (search) => aheadSearch.parse(search),
      component: lazyRouteComponent(() => import('./ahead-page.tsx'), 'AheadPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.greasingCompliance,
      validateSearch: (search) => complianceSearch.parse(search),
      component: lazyRouteComponent(() => import('./compliance-page.tsx'), 'CompliancePage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.greasingMail,
      component: lazyRouteComponent(() => import('./mail-page.tsx'), 'GreasingMailPage'),
    }),
  ]
}
