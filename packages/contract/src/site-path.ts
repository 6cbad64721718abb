/** The address of something that belongs to the site in the path. */
export function sitePath<P extends string>(rest: P): `/api/v1/sites/:site/${P}` {
  return `/api/v1/sites/:site/${rest}`
}
