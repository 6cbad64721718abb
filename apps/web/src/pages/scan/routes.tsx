import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'
import { labelsSearch } from './labels-search.ts'

export function scanPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.scan,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./scan-page.tsx'), 'ScanPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.at,
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./at-page.tsx'), 'AtPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.labels,
      validateSearch: (search) => labelsSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./labels-page.tsx'), 'LabelsPage'),
    }),
  ]
}
