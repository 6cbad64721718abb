import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { forgetFile, keepFile, keptFiles, tellOfFile } from '../../offline/kept-files.ts'
import { queuePhotos, type PhotosOf } from './queue-photos.ts'
import type { TakenPhoto } from './taken-photo.ts'

type Told = Pick<TakenPhoto, 'caption' | 'takenAt' | 'step'>

/** Photos of something half filled in, kept on this device until they are sent with it. */
export interface KeptPhotos {
  readonly photos: readonly TakenPhoto[]
  /** False where this device keeps nothing: they last as long as the page. */
  readonly areKept: boolean
  /** Takes the whole list as it should be: what is new is kept, what is missing is taken off the device. */
  readonly change: (photos: readonly TakenPhoto[]) => void
  /** Puts all of them into the outbox; the record they belong to is put there after that. */
  readonly queue: (of: PhotosOf) => Promise<void>
}

/** @param of names what they belong to, such as `removal/<position id>`: one name, one list, also after a reload */
export function useKeptPhotos(of: string): KeptPhotos {
  const [photos, setPhotos] = useState<readonly TakenPhoto[]>([])
  const [areKept, setAreKept] = useState(true)
  /** The list as it was changed last, and the writes of it, one after the other. */
  const latest = useRef<readonly TakenPhoto[]>([])
  const writes = useRef<Promise<void>>(Promise.resolve())
  const show = useCallback((next: readonly TakenPhoto[]) => {
    latest.current = next
    setPhotos(next)
  }, [])

  useEffect(() => {
    let isLeft = false
    const read = async (): Promise<void> => {
      const files = await keptFiles<Told>(of)
      const kept = files.map(({ id, file, told }) => ({ id, blob: file, ...told }))
      if (!isLeft && kept.length > 0) show([...kept, ...latest.current])
    }
    read().catch(() => setAreKept(false))
    return () => {
      isLeft = true
    }
  }, [of, show])

  const change = useCallback(
    (next: readonly TakenPhoto[]) => {
      const before = latest.current
      show(next)
      writes.current = writes.current.then(() => keepChanges(of, before, next)).catch(() => setAreKept(false))
    },
    [of, show],
  )
  const queue = useCallback(
    async (about: PhotosOf) => {
      await writes.current
      const sent = latest.current
      await queuePhotos(about, sent)
      for (const { id } of sent) await forgetFile(of, id)
      show([])
    },
    [of, show],
  )
  return useMemo(() => ({ photos, areKept, change, queue }), [photos, areKept, change, queue])
}

async function keepChanges(of: string, before: readonly TakenPhoto[], next: readonly TakenPhoto[]): Promise<void> {
  const known = new Map(before.map((photo) => [photo.id, photo]))
  for (const photo of next) {
    const { id, blob, caption, takenAt, step } = photo
    const told: Told = { caption, takenAt, step }
    const old = known.get(id)
    if (!old) await keepFile(of, { id, file: blob, told })
    else if (old !== photo) await tellOfFile(of, id, told)
    known.delete(id)
  }
  for (const id of known.keys()) await forgetFile(of, id)
}
