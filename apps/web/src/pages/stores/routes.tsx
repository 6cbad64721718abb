import { createRoute, lazyRouteComponent } from '@tanstack/react-router'
import { patterns } from '../../paths.ts'
import { RouteError } from '../route-error.tsx'
import type { SiteParent } from '../site-page.ts'
import { findSearch, partsSearch } from './stores-search.ts'

export function storesPages(getParentRoute: SiteParent) {
  const shared = { getParentRoute, errorComponent: RouteError }
  return [
    createRoute({
      ...shared,
      path: patterns.stores,
      validateSearch: (search) => findSearch.parse(search),
      component: lazyRouteComponent(() => import('./stores-page.tsx'), 'StoresPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.pickList,
      component: lazyRouteComponent(() => import('./pick-list-page.tsx'), 'PickListPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.parts,
      validateSearch: (search) => partsSearch.parse(search),
      component: lazyRouteComponent(() => import('./parts-page.tsx'), 'PartsPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.part,
      component: lazyRouteComponent(() => import('./part-page.tsx'), 'PartPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.kits,
      validateSearch: (search) => findSearch.parse(search),
      component: lazyRouteComponent(() => import('./kits-page.tsx'), 'KitsPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.kit,
      component: lazyRouteComponent(() => import('./kit-page.tsx'), 'KitPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.newPart,
      component: lazyRouteComponent(() => import('./part-form-pages.tsx'), 'NewPartPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.changePart,
      component: lazyRouteComponent(() => import('./part-form-pages.tsx'), 'ChangePartPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.newKit,
      component: lazyRouteComponent(() => import('./kit-form-pages.tsx'), 'NewKitPage'),
    }),
    createRoute({
      ...shared,
      path: patterns.changeKit,
      component: lazyRouteComponent(() => import('./kit-form-pages.tsx'), 'ChangeKitPage'),
    }),
  ]
}
