import type { SiteOwned } from './site-rows.ts'

export interface ObservationRow extends SiteOwned {
  positionId: string
  greasingId: string | null
  observedAt: Date
  temperatureC: number | null
  vibrationMmS: number | null
  zone: 'A' | 'B' | 'C' | 'D' | null
  reliefClosed: boolean | null
  oldGreaseSeen: boolean | null
  note: string
  signedAt: Date
  signedBy: string
}

export interface GreaseChangeRow extends SiteOwned {
  positionId: string
  fromGreaseId: string
  toGreaseId: string
  way: 'strip' | 'flush' | 'lab-first'
  state: 'lab' | 'strip' | 'flush'
  reason: string
  planBeforeId: string
  dosesLeft: number | null
  startedAt: Date
  startedBy: string
  stateSince: Date
  note: string
}
