import type { Endpoint } from '@shaftbook/contract/endpoint'
import { loadGun, type Gun } from '@shaftbook/contract/guns'
import { finishRoundWalk, recordWalkStop, startRoundWalk, type StopOutcome } from '@shaftbook/contract/round-walks'
import type { Round, RoundStop } from '@shaftbook/contract/rounds'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { queueWrite, withdrawWrite, type Outcome, type Write } from '../../offline/outbox.ts'
import { useDraft } from '../../offline/use-draft.ts'
import { useOutbox } from '../../offline/use-device.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { newWalk, nextOpen, stopBody, typedDoseG, type GunInHand, type StopEntry, type Walk } from './walk-state.ts'

/** A walk of a round on this device: what is kept of it, and its acts. Every record goes through the outbox. */
export function useWalk(round: Round, guns: readonly Gun[]) {
  const { code, me } = useSite()
  const address = paths.walkRound(code, round.id)
  const draft = useDraft<Walk>(
    { personId: me.id, site: code, subject: `walk/${round.id}` },
    { title: `Round ${round.name}`, address },
  )
  const [walk, setWalk] = useState(draft.found)
  const [trouble, setTrouble] = useState<string | null>(null)
  const outbox = useOutbox(me.id)
  const [refusals, setRefusals] = useState<Readonly<Record<string, string>>>({})
  const keep = (next: Walk): void => {
    setWalk(next)
    draft.keep(next)
  }

  const tellRefusal = async (id: string, outcome: Promise<Outcome<unknown>>): Promise<void> => {
    const end = await outcome
    if (end.state === 'refused') setRefusals((known) => ({ ...known, [id]: end.problem.detail }))
  }

  /** Into the outbox, and on: only what cannot even be kept stops the walk. */
  const queue = async <E extends Endpoint>(write: Omit<Write<E>, 'kind' | 'site' | 'address'> & { id: string }) => {
    setTrouble(null)
    try {
      const { outcome } = await queueWrite<E>({ kind: 'round', site: code, address, ...write })
      void tellRefusal(write.id, outcome)
      return true
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'It could not be kept on this device.')
      return false
    }
  }

  const begin = async (gunId: string | null): Promise<void> => {
    const next = { ...newWalk(round, newId, new Date()), gunId }
    const stops = next.round.stops.map(({ id, positionId, task }) => ({ id, positionId, task }))
    const body = { id: next.id, roundId: round.id, startedAt: next.startedAt, stops }
    const input = { params: { site: code }, body }
    const about = { positionId: null, subjectText: `Start of the round ${round.name}` }
    if (await queue({ id: next.id, ...about, endpoint: startRoundWalk, input })) keep(next)
  }

  const sign = async (
    stop: RoundStop,
    entry: StopEntry,
    gun: GunInHand | null,
    outcome: StopOutcome,
  ): Promise<boolean> => {
    if (!walk) return false
    const doseG = outcome === 'done' ? (typedDoseG(entry, gun) ?? null) : null
    const signed = { ...entry, outcome, doneAt: new Date().toISOString(), doseG }
    const input = { params: { site: code, id: walk.id }, body: stopBody(stop, signed, gun, outcome) }
    const about = { positionId: stop.positionId, subjectText: `Stop ${stop.tag} of the round ${round.name}` }
    if (!(await queue({ id: entry.id, ...about, endpoint: recordWalkStop, input }))) return false
    const next = { ...walk, entries: { ...walk.entries, [stop.id]: signed } }
    keep({ ...next, at: nextOpen(next, walk.at) })
    return true
  }

  /** Takes a refused result back, to be put right and signed again. */
  const mend = async (stop: RoundStop, entry: StopEntry): Promise<void> => {
    if (!walk) return
    await withdrawWrite(entry.id)
    setRefusals((known) => Object.fromEntries(Object.entries(known).filter(([id]) => id !== entry.id)))
    keep({ ...walk, entries: { ...walk.entries, [stop.id]: { ...entry, outcome: null, doneAt: null, doseG: null } } })
  }

  const load = async (gun: GunInHand, greaseId: string): Promise<void> => {
    if (!walk) return
    const id = newId()
    const input = { params: { site: code, id: gun.id }, body: { id, greaseId, loadedAt: new Date().toISOString() } }
    const about = { positionId: null, subjectText: `What ${gun.name} is loaded with` }
    if (await queue({ id, ...about, endpoint: loadGun, input }))
      keep({ ...walk, gunId: gun.id, loads: { ...walk.loads, [gun.id]: greaseId } })
  }

  const end = async (): Promise<void> => {
    if (!walk) return
    const endedAt = new Date().toISOString()
    const body = { id: walk.finishId, endedAt, note: walk.note.trim() }
    const input = { params: { site: code, id: walk.id }, body }
    const about = { positionId: null, subjectText: `End of the round ${round.name}` }
    if (await queue({ id: walk.finishId, ...about, endpoint: finishRoundWalk, input })) keep({ ...walk, endedAt })
  }

  const ids = walk
    ? new Set([walk.id, walk.finishId, ...Object.values(walk.entries).map(({ id }) => id)])
    : new Set<string>()
  const refused = new Map(Object.entries(refusals))
  for (const { id, state, problem } of outbox)
    if (state === 'refused' && problem && ids.has(id)) refused.set(id, problem.detail)
  const hands: GunInHand[] = guns.map(({ id, name, gramsPerStroke, greaseId }) => ({
    id,
    name,
    gramsPerStroke,
    greaseId: walk?.loads[id] ?? greaseId,
  }))
  return {
    walk,
    keep,
    begin,
    sign,
    mend,
    load,
    end,
    forget: draft.forget,
    trouble,
    /** What the service refused, by the id of the record. */
    refused,
    /** Records of this walk that are on this device only. */
    waiting: outbox.filter(({ id, state }) => state !== 'sent' && ids.has(id)).length,
    guns: hands,
    gun: hands.find(({ id }) => id === walk?.gunId) ?? null,
  }
}
export type WalkWork = ReturnType<typeof useWalk>
