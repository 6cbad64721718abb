import { useSuspenseQuery } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import type { MountPlan } from '@shaftbook/contract/mount-plans'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { useUnits } from '../../lib/units.tsx'
import type { DraftAbout, DraftKey } from '../../offline/drafts.ts'
import { useDraft, type Keeping } from '../../offline/use-draft.ts'
import { useSite } from '../../session/site-access.tsx'
import { limitsAt } from './band-of-place.ts'
import { kitAnswersOf } from './kit-check.ts'
import { bearingTypesQuery, chartQuery, placeQuery, settingsQuery } from './mount-queries.ts'
import type { Suggestions } from './service-faults.ts'
import { asksOf } from './sheet-asks.ts'
import type { SheetState } from './sheet-context.ts'
import { typingFaults, type Faults } from './sheet-faults.ts'
import { judgeSheet } from './sheet-judgement.ts'
import { newSheet } from './sheet-new.ts'
import { sheetOfRecord } from './sheet-of-record.ts'
import { sheetAddress, sheetSubject, sheetTitle } from './sheet-subject.ts'
import { sheetScope, stepKeys, type SheetPurpose, type StepKey } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'
import { askingSteps } from './step-questions.ts'
import { stepStates, type StepState } from './step-state.ts'
import { useKeptAfterPaint } from './use-kept-after-paint.ts'

export interface SheetAbout {
  purpose: SheetPurpose
  positionId: string
  /** The draft to go on with, or the signed record to correct. */
  record: MountRecord | null
  /** The plan that the mount is made for. */
  plan?: MountPlan | null
}

export interface SheetHold extends SheetState {
  setFaults: (faults: Faults, suggestions?: Suggestions) => void
  /** Under which name the sheet lies on this device, and what lists say of it. */
  kept: { key: DraftKey; about: DraftAbout }
  keeping: Keeping
  /** Something is typed that is not sent. */
  dirty: boolean
  /** What was typed before is back. */
  restored: boolean
  startAfresh: () => void
  /** The outbox or the service has the sheet: it is not unfinished any more. */
  handedOn: () => void
}

interface Refused {
  faults: Faults
  suggestions: Suggestions
}

const nothingRefused: Refused = { faults: {}, suggestions: {} }

/** Holds a mount sheet while it is filled in, keeps it on the device, and judges it as it stands. */
export function useSheetState(sheetAbout: SheetAbout): SheetHold {
  const { purpose, positionId, record, plan = null } = sheetAbout
  const { code, me, site } = useSite()
  const { unit } = useUnits()
  const { data: place } = useSuspenseQuery(placeQuery(code, positionId))
  const { data: types } = useSuspenseQuery(bearingTypesQuery(code))
  const { data: settings } = useSuspenseQuery(settingsQuery(code))
  const { data: chart } = useSuspenseQuery(chartQuery(code, place.position.makerChartId))
  const kept = {
    key: { personId: me.id, site: code, subject: sheetSubject(sheetAbout) },
    about: { title: sheetTitle(sheetAbout, place.position.tag), address: sheetAddress(code, sheetAbout) },
  }
  const draft = useDraft<Sheet>(kept.key, kept.about)
  const keep = useKeptAfterPaint(draft.keep)
  const begin = (): Sheet => {
    const start = { place, plan, personName: me.name, unit, timeZone: site.timeZone, now: new Date() }
    return record ? sheetOfRecord(record, start) : newSheet(start)
  }
  const [held, setHeld] = useState(() => {
    const blank = begin()
    // fields that are new since the sheet was kept are taken from a blank one
    const sheet = { ...blank, ...draft.found }
    const planId = plan?.id ?? sheet.planId
    return { sheet: { ...sheet, planId }, dirty: draft.found !== null, restored: draft.found !== null }
  })
  const [{ faults, suggestions }, setRefused] = useState<Refused>(nothingRefused)
  const { sheet, dirty } = held
  const type = types.items.find(({ id }) => id === sheet.bearingTypeId) ?? place.bearingType
  const limits = useMemo(() => limitsAt(place.position, type, chart), [place.position, type, chart])
  const judged = useMemo(() => judgeSheet(sheet, type, limits, settings.settings), [sheet, type, limits, settings])
  const scope = useMemo(() => sheetScope(purpose, place, type, sheet.method), [purpose, place, type, sheet.method])
  const asks = useMemo(() => {
    const facts = { hasMeter: place.meter !== null, kitLineIds: place.kit?.lines.map(({ id }) => id) ?? [] }
    return asksOf(scope, sheet, facts)
  }, [scope, sheet, place])
  const kitAnswers = useMemo(() => kitAnswersOf(sheet, place, type), [sheet, place, type])
  const statesNow = useMemo(() => {
    const wrong = { ...faults, ...typingFaults({ sheet, judged }) }
    const asking = askingSteps({ sheet, scope, place, type, judged, kitAnswers, faults: wrong })
    return stepStates(scope, asks, sheet, asking)
  }, [sheet, scope, place, type, judged, kitAnswers, asks, faults])
  const states = useSame(statesNow)

  return {
    sheet,
    change: (part) => {
      const next = { ...sheet, ...part }
      setHeld((old) => ({ ...old, sheet: next, dirty: true }))
      keep(next)
      setRefused((old) => ({
        faults: without(old.faults, Object.keys(part)),
        suggestions: without(old.suggestions, Object.keys(part)),
      }))
    },
    faultOf: (field) => faults[field],
    suggestionsOf: (field) => suggestions[field],
    setFaults: (found, meant = {}) => setRefused({ faults: found, suggestions: meant }),
    scope,
    place,
    record,
    plan,
    settings: settings.settings,
    type,
    limits,
    judged,
    asks,
    states,
    kitAnswers,
    kept,
    keeping: draft.keeping,
    dirty,
    restored: held.restored,
    startAfresh: () => {
      draft.forget()
      setRefused(nothingRefused)
      setHeld({ sheet: begin(), dirty: false, restored: false })
    },
    handedOn: () => {
      draft.forget()
      setHeld((old) => ({ ...old, dirty: false }))
    },
  }
}

/** The states of before while none has changed, so that what shows them is not drawn again at every key. */
function useSame(states: Record<StepKey, StepState>): Record<StepKey, StepState> {
  const [held, setHeld] = useState(states)
  const same = stepKeys.every((step) => held[step] === states[step])
  if (!same) setHeld(states)
  return same ? held : states
}

/** A field that is typed in loses its fault; readings lose theirs together. */
function without<T>(byField: Readonly<Record<string, T>>, fields: string[]): Readonly<Record<string, T>> {
  const entries = Object.entries(byField)
  const left = entries.filter(([key]) => !fields.some((field) => key === field || key.startsWith(`${field}.`)))
  return left.length === entries.length ? byField : Object.fromEntries(left)
}
