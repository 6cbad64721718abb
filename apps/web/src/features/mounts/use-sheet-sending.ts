import { changeMountDraft, correctMount, createMount, type MountRecord } from '@shaftbook/contract/mounts'
import { v7 as newId } from 'uuid'
import { useOutboxSend, type Taken } from '../../offline/use-outbox-send.ts'
import { useSite } from '../../session/site-access.tsx'
import { correctionBody, draftBody, newMountBody, type BodyInput } from './sheet-body.ts'
import type { SheetAbout, SheetHold } from './use-sheet-state.ts'

interface Sending {
  /** Goes into the outbox before the sheet: its photos. */
  first: (() => Promise<void>) | undefined
  onTaken: (taken: Taken<MountRecord>, signed: boolean) => unknown
  onRefused: (error: Error) => void
}

/** Sends a sheet through the outbox: signed, or handed over as a draft; new, on top of a draft, or as a correction. */
export function useSheetSending(about: SheetAbout, hold: SheetHold, { first, onTaken, onRefused }: Sending) {
  const { code: site } = useSite()
  const { purpose, positionId, record } = about
  const taken = (sign: boolean) => (end: Taken<MountRecord>) => onTaken(end, sign)
  const create = useOutboxSend<typeof createMount>({ first, onTaken: taken(true), onRefused })
  const handOver = useOutboxSend<typeof createMount>({ first, onTaken: taken(false), onRefused })
  const change = useOutboxSend<typeof changeMountDraft>({ first, onTaken: taken(true), onRefused })
  const handOn = useOutboxSend<typeof changeMountDraft>({ first, onTaken: taken(false), onRefused })
  const correct = useOutboxSend<typeof correctMount>({ first, onTaken: taken(true), onRefused })
  const all = [create, handOver, change, handOn, correct]
  const { key, about: named } = hold.kept
  const write = {
    kind: 'mount' as const,
    site,
    positionId,
    subjectText: named.title,
    address: named.address,
    typed: { subject: key.subject, ...named, value: hold.sheet },
  }
  return {
    send: (input: BodyInput, sign: boolean): void => {
      for (const each of all) each.reset()
      if (purpose === 'correction' && record) {
        const params = { site, id: record.id }
        correct.mutate({ ...write, endpoint: correctMount, input: { params, body: correctionBody(input) } })
      } else if (record) {
        const body = { ...draftBody(input), sign, changeId: newId() }
        const sent = { params: { site, id: record.id }, body, version: record.version }
        const by = sign ? change : handOn
        by.mutate({ ...write, endpoint: changeMountDraft, input: sent })
      } else {
        const by = sign ? create : handOver
        const body = newMountBody(input, positionId, sign)
        by.mutate({ ...write, endpoint: createMount, input: { params: { site }, body } })
      }
    },
    reset: () => {
      for (const each of all) each.reset()
    },
    signing: create.isPending || change.isPending || correct.isPending,
    handing: handOver.isPending || handOn.isPending,
    done: all.some(({ isSuccess }) => isSuccess),
    error: all.find(({ isError }) => isError)?.error ?? null,
  }
}
