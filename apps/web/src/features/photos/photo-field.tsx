import { Button } from '@mantine/core'
import { useRef, type ChangeEvent, type ReactNode } from 'react'
import classes from './photo-field.module.css'
import { TakenPhotoItem } from './taken-photo-item.tsx'
import type { TakenPhoto } from './taken-photo.ts'
import { useAdding } from './use-adding.ts'

interface PhotoFieldProps {
  /** What the photos should show: "The bearing as it was found". */
  label: string
  description?: ReactNode
  photos: readonly TakenPhoto[]
  onChange: (photos: readonly TakenPhoto[]) => void
  /** Names the step of the work on the photos that are added here. */
  step?: string
  /** How many a record takes in all. */
  most?: number
  disabled?: boolean
}

/** Takes photos with the camera or from files, makes them small at once, and lets each be captioned or thrown away. */
export function PhotoField(props: PhotoFieldProps) {
  const { label, description, photos, onChange, step = '', most = 20, disabled = false } = props
  const { left, faults, add } = useAdding(photos, onChange, step)
  const room = most - photos.length
  const isBusy = left > 0
  const replace = (id: string, part: Partial<TakenPhoto>) =>
    onChange(photos.map((photo) => (photo.id === id ? { ...photo, ...part } : photo)))
  const choose = (files: readonly File[]) => void add(files.slice(0, room))
  return (
    <fieldset className={classes.field} disabled={disabled}>
      <legend className={classes.label}>{label}</legend>
      {description && <p className={classes.description}>{description}</p>}
      {photos.length > 0 && (
        <ol className={classes.list}>
          {photos.map((photo, at) => (
            <TakenPhotoItem
              key={photo.id}
              photo={photo}
              number={at + 1}
              onCaption={(caption) => replace(photo.id, { caption })}
              onRemove={() => onChange(photos.filter(({ id }) => id !== photo.id))}
            />
          ))}
        </ol>
      )}
      <div className={classes.acts}>
        <FileButton className={classes.camera} capture disabled={isBusy || room < 1} onFiles={choose}>
          Take a photo
        </FileButton>
        <FileButton disabled={isBusy || room < 1} onFiles={choose}>
          Choose photos
        </FileButton>
      </div>
      <output className={classes.says}>
        {isBusy && (left === 1 ? 'One photo is being made smaller.' : `${left} photos are being made smaller.`)}
        {room < 1 && `${most} photos are the most that go with one record.`}
      </output>
      {faults.length > 0 && (
        <div className={classes.faults} role="alert">
          {faults.map((fault) => (
            <p key={fault}>{fault}</p>
          ))}
        </div>
      )}
    </fieldset>
  )
}

interface FileButtonProps {
  children: string
  capture?: boolean
  className?: string | undefined
  disabled: boolean
  onFiles: (files: readonly File[]) => void
}

function FileButton({ children, capture = false, className, disabled, onFiles }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  const chosen = ({ currentTarget }: ChangeEvent<HTMLInputElement>) => {
    const files = [...(currentTarget.files ?? [])]
    // the same file can be chosen again
    currentTarget.value = ''
    onFiles(files)
  }
  return (
    <>
      <Button
        className={className}
        size="touch"
        variant="default"
        disabled={disabled}
        onClick={() => input.current?.click()}
      >
        {children}
      </Button>
      <input
        ref={input}
        hidden
        type="file"
        accept="image/*"
        aria-label={children}
        onChange={chosen}
        {...(capture ? { capture: 'environment' } : { multiple: true })}
      />
    </>
  )
}
