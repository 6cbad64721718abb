import { lazy, Suspense, useMemo } from 'react'
import { SheetOrWaiting } from '../../features/mounts/sheet-or-waiting.tsx'
import type { SheetSlots } from '../../features/mounts/sheet-slots.ts'
import { sheetAddress, sheetSubject } from '../../features/mounts/sheet-subject.ts'
import type { SheetAbout } from '../../features/mounts/use-sheet-state.ts'
import { KeptPhotoField } from '../../features/photos/kept-photo-field.tsx'
import { useKeptPhotos, type KeptPhotos } from '../../features/photos/use-kept-photos.ts'
import { useSite } from '../../session/site-access.tsx'

// the reader of codes is large and only needed once somebody asks for the camera
const CodeScanner = lazy(async () => {
  const { CodeScanner: scanner } = await import('../../features/scan/code-scanner.tsx')
  return { default: scanner }
})

const photoWords = {
  strip: ['Photos as found', 'Before anything is cleaned: housing, grease, rings, the side of the nut'],
  seat: ['Photos of shaft and housing', 'Marks, wear, what was dressed'],
  sign: ['Photos as left', 'Nut and lock, cap and marks, the gauge in place'],
} as const

/** The mount sheet with its photos and the camera for codes. */
export function SheetWithPhotos({ tag, ...about }: SheetAbout & { tag: string }) {
  const { code } = useSite()
  const kept = useKeptPhotos(sheetSubject(about))
  const address = sheetAddress(code, about)
  const { positionId } = about
  const slots = useMemo<SheetSlots>(
    () => ({
      photos: photosIn(kept),
      scanner: cameraFor,
      queuePhotos: (subjectId) => kept.queue({ site: code, positionId, tag, subjectKind: 'mount', subjectId, address }),
    }),
    [kept, code, positionId, tag, address],
  )
  return <SheetOrWaiting {...about} slots={slots} />
}

function photosIn(kept: KeptPhotos) {
  return (step: keyof typeof photoWords) => (
    <KeptPhotoField kept={kept} step={step} label={photoWords[step][0]} description={photoWords[step][1]} />
  )
}

function cameraFor(onCode: (code: string) => void) {
  return (
    <Suspense fallback={<p>Starting the camera …</p>}>
      <CodeScanner kinds="boxes" onCode={onCode} />
    </Suspense>
  )
}
