import type { Me } from '@shaftbook/contract/access'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import { createContext, use } from 'react'

export interface SiteAccess {
  readonly me: Me
  readonly site: Me['memberships'][number]
  /** The site's code, as it stands in addresses. */
  readonly code: string
  /** Whether this person's role may call the endpoint: what may not be done is not offered. */
  readonly may: (endpoint: Endpoint) => boolean
}

const SiteContext = createContext<SiteAccess | null>(null)

export const SiteProvider = SiteContext.Provider

/** The site of the page and the person at it. */
export function useSite(): SiteAccess {
  const access = use(SiteContext)
  if (!access) throw new Error('useSite needs a site page above it')
  return access
}

export function siteAccess(me: Me, code: string): SiteAccess | null {
  const site = me.memberships.find((membership) => membership.siteCode === code)
  if (!site) return null
  return { me, site, code, may: ({ access }) => typeof access === 'string' || access.includes(site.role) }
}
