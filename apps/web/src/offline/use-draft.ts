import { use, useCallback, useEffect, useRef, useState } from 'react'
import { draftName, forgetDraft, keepDraft, keptDraft, type DraftAbout, type DraftKey } from './drafts.ts'

/** How it stands with what was typed last: `kept` is on the disk. */
export type Keeping = 'nothing' | 'keeping' | 'kept' | 'not-kept'

export interface Draft<T> {
  /** What was kept when the form opened, or null. */
  readonly found: T | null
  readonly keeping: Keeping
  /** Call it with the whole value on every change. */
  readonly keep: (value: T) => void
  /** The value is sent, or not wanted any more. */
  readonly forget: () => void
}

/** Reads that are under way for forms that are not on the screen yet: each suspended try must meet the same promise. */
const reading = new Map<string, Promise<unknown>>()

function readOnce<T>(key: DraftKey): Promise<T | null> {
  const name = draftName(key)
  const known = reading.get(name) as Promise<T | null> | undefined
  if (known) return known
  // what cannot be read is as good as not there: the form begins afresh
  const read = keptDraft<T>(key).catch(() => null)
  reading.set(name, read)
  return read
}

/** Keeps what is typed in a form on this device. Suspends until what was kept before is read; give the form a React key per draft. */
export function useDraft<T>(key: DraftKey, about: DraftAbout): Draft<T> {
  const [keeping, setKeeping] = useState<Keeping>('nothing')
  const [read] = useState(() => readOnce<T>(key))
  const found = use(read)
  const name = draftName(key)
  useEffect(() => {
    reading.delete(name)
  }, [name])

  const at = useRef({ key, about })
  useEffect(() => {
    at.current = { key, about }
  })
  const writes = useRef(0)
  const keep = useCallback((value: T) => {
    writes.current += 1
    const write = writes.current
    setKeeping('keeping')
    const settle = (state: Keeping) => () => {
      if (write === writes.current) setKeeping(state)
    }
    keepDraft(at.current.key, at.current.about, value).then(settle('kept'), settle('not-kept'))
  }, [])
  const forget = useCallback(() => {
    writes.current += 1
    setKeeping('nothing')
    void forgetDraft(at.current.key)
  }, [])
  return { found, keeping, keep, forget }
}
