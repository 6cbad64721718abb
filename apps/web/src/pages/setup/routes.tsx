import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import type { SiteParent } from '../site-page.ts'
import { auditSearch, bearingTypesSearch, metersSearch, newChartSearch, withinSearch } from './setup-search.ts'

export function setupPages(getParentRoute: SiteParent) {
  return [
    createRoute({
      getParentRoute,
      path: patterns.setup,
      component: lazyRouteComponent(() => import('./setup-page.tsx'), 'SetupPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.site,
      component: lazyRouteComponent(() => import('./site-page.tsx'), 'SitePage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.people,
      component: lazyRouteComponent(() => import('./people-page.tsx'), 'PeoplePage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.admitPerson,
      component: lazyRouteComponent(() => import('./admit-page.tsx'), 'AdmitPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.places,
      component: lazyRouteComponent(() => import('./places-page.tsx'), 'PlacesPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.place,
      component: lazyRouteComponent(() => import('./place-page.tsx'), 'PlacePage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.meters,
      validateSearch: (search) => metersSearch.parse(search),
      component: lazyRouteComponent(() => import('./meters-page.tsx'), 'MetersPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.readMeters,
      validateSearch: (search) => metersSearch.parse(search),
      component: lazyRouteComponent(() => import('./read-meters-page.tsx'), 'ReadMetersPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.meter,
      component: lazyRouteComponent(() => import('./meter-page.tsx'), 'MeterPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.bearingTypes,
      validateSearch: (search) => bearingTypesSearch.parse(search),
      component: lazyRouteComponent(() => import('./bearing-types-page.tsx'), 'BearingTypesPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.greases,
      component: lazyRouteComponent(() => import('./greases-page.tsx'), 'GreasesPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.gauges,
      component: lazyRouteComponent(() => import('./gauges-page.tsx'), 'GaugesPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.charts,
      component: lazyRouteComponent(() => import('./charts-page.tsx'), 'ChartsPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.newChart,
      validateSearch: (search) => newChartSearch.parse(search),
      component: lazyRouteComponent(() => import('./chart-pages.tsx'), 'NewChartPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.chart,
      component: lazyRouteComponent(() => import('./chart-pages.tsx'), 'ChartPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.changeChart,
      component: lazyRouteComponent(() => import('./chart-pages.tsx'), 'ChangeChartPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.enterRow,
      validateSearch: (search) => withinSearch.parse(search),
      component: lazyRouteComponent(() => import('./row-pages.tsx'), 'EnterRowPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.changeRow,
      component: lazyRouteComponent(() => import('./row-pages.tsx'), 'ChangeRowPage'),
    }),
    createRoute({
      getParentRoute,
      path: patterns.audit,
      validateSearch: (search) => auditSearch.parse(search),
      component: lazyRouteComponent(() => import('./audit-page.tsx'), 'AuditPage'),
    }),
  ]
}
