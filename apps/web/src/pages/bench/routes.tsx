import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'
import { calculationSearch, contentsSearch } from './bench-search.ts'

export function benchPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.bench,
      validateSearch: (search) => contentsSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./bench-page.tsx'), 'BenchPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.calculation,
      validateSearch: (search) => calculationSearch.parse(search),
      errorComponent: RouteError,
      component: lazyRouteComponent(() => import('./calculation-page.tsx'), 'CalculationPage'),
    }),
  ]
}
