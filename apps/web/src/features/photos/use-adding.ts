import { useEffect, useRef, useState } from 'react'
import { v7 } from 'uuid'
import { PhotoUnreadableError, shrinkPhoto } from './shrink-photo.ts'
import { takenAtOf, type TakenPhoto } from './taken-photo.ts'

interface Adding {
  /** Files that are being made smaller. */
  readonly left: number
  readonly faults: readonly string[]
  readonly add: (files: readonly File[]) => Promise<void>
}

/** Makes chosen files into photos, one after the other: a phone has no memory for several at once. */
export function useAdding(
  photos: readonly TakenPhoto[],
  onChange: (photos: readonly TakenPhoto[]) => void,
  step: string,
): Adding {
  const [left, setLeft] = useState(0)
  const [faults, setFaults] = useState<readonly string[]>([])
  const now = useRef({ photos, onChange })
  useEffect(() => {
    now.current = { photos, onChange }
  })
  const add = async (files: readonly File[]): Promise<void> => {
    setFaults([])
    setLeft(files.length)
    for (const [at, file] of files.entries()) {
      try {
        const blob = await shrinkPhoto(file)
        const takenAt = takenAtOf(file.lastModified, new Date())
        const photo = { id: v7(), blob, caption: '', takenAt, step }
        now.current.onChange([...now.current.photos, photo])
        // the next one is added to the list that this one is in
        await new Promise((resolve) => setTimeout(resolve))
      } catch (error) {
        if (!(error instanceof PhotoUnreadableError)) throw error
        setFaults((all) => [...all, error.message])
      }
      setLeft(files.length - at - 1)
    }
  }
  return { left, faults, add }
}
