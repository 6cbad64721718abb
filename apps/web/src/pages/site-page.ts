import type { AnyRoute } from '@tanstack/react-router'

/** The route that all pages of a site hang below, given late because the router imports the pages. */
export type SiteParent = () => AnyRoute
