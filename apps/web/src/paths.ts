import type { DestinationKey } from './ui/destinations.tsx'

/** Every address of the dashboard. No other file writes one. */
export const paths = {
  home: '/',
  flags: '/flags',
  positions: '/positions',
  position: { pattern: '/positions/$tag', href: (tag: string) => `/positions/${encodeURIComponent(tag)}` },
  mounts: '/mounts',
  mount: { pattern: '/mounts/$id', href: (id: string) => `/mounts/${encodeURIComponent(id)}` },
  greasing: '/greasing',
  stores: '/stores',
  life: '/life',
  setup: '/setup',
  signIn: '/sign-in',
  gallery: '/gallery',
} as const

/** Where the frame's seven destinations lead. */
export const destinationHrefs: Record<DestinationKey, string> = {
  flags: paths.flags,
  positions: paths.positions,
  mounts: paths.mounts,
  greasing: paths.greasing,
  stores: paths.stores,
  life: paths.life,
  setup: paths.setup,
}
