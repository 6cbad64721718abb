import type { ReactNode } from 'react'
import { PhotoField } from './photo-field.tsx'
import type { KeptPhotos } from './use-kept-photos.ts'

interface KeptPhotoFieldProps {
  kept: KeptPhotos
  label: string
  description?: ReactNode
  /** Only the photos of this step are shown, and those that are added get its name. */
  step?: string
  disabled?: boolean
}

/** The photos of something half filled in, at one of its steps. */
export function KeptPhotoField({ kept, label, description, step = '', disabled = false }: KeptPhotoFieldProps) {
  const { photos, areKept, change } = kept
  const others = photos.filter((photo) => photo.step !== step)
  return (
    <PhotoField
      label={label}
      description={
        <>
          {description}
          {!areKept && ' This device does not keep them: stay on this page until they are sent.'}
        </>
      }
      step={step}
      disabled={disabled}
      photos={photos.filter((photo) => photo.step === step)}
      most={20 - others.length}
      onChange={(next) => change([...others, ...next])}
    />
  )
}
