import { useSuspenseQuery } from '@tanstack/react-query'
import { useEffect, useMemo, useState } from 'react'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { useUnits } from '../../lib/units.tsx'
import { useSite } from '../../session/site-access.tsx'
import { limitsAt } from './band-of-place.ts'
import { bearingTypesQuery, chartQuery, placeQuery, settingsQuery } from './mount-queries.ts'
import { sheetScope, type SheetPurpose, type SheetState } from './sheet-context.ts'
import type { Faults, Suggestions } from './sheet-faults.ts'
import { judgeSheet } from './sheet-judgement.ts'
import { forgetSheet, keepSheet, keptSheet, sheetKey } from './sheet-keep.ts'
import { newSheet, sheetOfRecord, type Sheet } from './sheet.ts'

export interface SheetAbout {
  purpose: SheetPurpose
  positionId: string
  /** The draft to go on with, or the signed record to correct. */
  record: MountRecord | null
}

export interface SheetHold extends SheetState {
  setFaults: (faults: Faults, suggestions?: Suggestions) => void
  /** Something is typed that is not sent. */
  dirty: boolean
  /** What was typed before is back. */
  restored: boolean
  startAfresh: () => void
  /** The service has the sheet: nothing is kept here any more. */
  forget: () => void
}

interface Refused {
  faults: Faults
  suggestions: Suggestions
}

const nothingRefused: Refused = { faults: {}, suggestions: {} }

/** Holds a mount sheet while it is filled in, keeps it on the device, and judges it as it stands. */
export function useSheetState({ purpose, positionId, record }: SheetAbout): SheetHold {
  const { code, me, site } = useSite()
  const { unit } = useUnits()
  const { data: place } = useSuspenseQuery(placeQuery(code, positionId))
  const { data: types } = useSuspenseQuery(bearingTypesQuery(code))
  const { data: settings } = useSuspenseQuery(settingsQuery(code))
  const { data: chart } = useSuspenseQuery(chartQuery(code, place.position.makerChartId))
  const key = sheetKey(me.id, code, record?.id ?? positionId)
  const begin = (): Sheet => {
    const start = { place, personName: me.name, unit, timeZone: site.timeZone, now: new Date() }
    return record ? sheetOfRecord(record, start) : newSheet(start)
  }
  const [held, setHeld] = useState(() => {
    const blank = begin()
    const kept = keptSheet(key, blank)
    return { sheet: kept ?? blank, dirty: kept !== null, restored: kept !== null }
  })
  const [{ faults, suggestions }, setRefused] = useState<Refused>(nothingRefused)
  const { sheet, dirty } = held
  useEffect(() => {
    if (dirty) keepSheet(key, sheet)
  }, [key, sheet, dirty])
  const type = types.items.find(({ id }) => id === sheet.bearingTypeId) ?? place.bearingType
  const limits = useMemo(() => limitsAt(place.position, type, chart), [place.position, type, chart])
  const judged = useMemo(() => judgeSheet(sheet, type, limits, settings.settings), [sheet, type, limits, settings])

  return {
    sheet,
    change: (part) => {
      setHeld((old) => ({ ...old, sheet: { ...old.sheet, ...part }, dirty: true }))
      setRefused((old) => ({
        faults: without(old.faults, Object.keys(part)),
        suggestions: without(old.suggestions, Object.keys(part)),
      }))
    },
    faultOf: (field) => faults[field],
    suggestionsOf: (field) => suggestions[field],
    setFaults: (found, meant = {}) => setRefused({ faults: found, suggestions: meant }),
    scope: sheetScope(purpose, place, type),
    place,
    record,
    type,
    limits,
    judged,
    dirty,
    restored: held.restored,
    startAfresh: () => {
      forgetSheet(key)
      setRefused(nothingRefused)
      setHeld({ sheet: begin(), dirty: false, restored: false })
    },
    forget: () => {
      forgetSheet(key)
      setHeld((old) => ({ ...old, dirty: false }))
    },
  }
}

/** A field that is typed in loses its fault; readings lose theirs together. */
function without<T>(byField: Readonly<Record<string, T>>, fields: string[]): Readonly<Record<string, T>> {
  return Object.fromEntries(
    Object.entries(byField).filter(([key]) => !fields.some((field) => key === field || key.startsWith(`${field}.`))),
  )
}
