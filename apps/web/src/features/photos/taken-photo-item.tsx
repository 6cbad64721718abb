import { Button, TextInput } from '@mantine/core'
import { BlobImage } from './blob-image.tsx'
import classes from './photo-field.module.css'
import { captionLength, type TakenPhoto } from './taken-photo.ts'

interface TakenPhotoItemProps {
  photo: TakenPhoto
  number: number
  onCaption: (caption: string) => void
  onRemove: () => void
}

/** A photo before it is sent: the picture, its caption, and the way to throw it away. */
export function TakenPhotoItem({ photo, number, onCaption, onRemove }: TakenPhotoItemProps) {
  return (
    <li className={classes.item}>
      <div className={classes.preview}>
        <BlobImage blob={photo.blob} alt={photo.caption === '' ? `Photo ${number}` : photo.caption} />
      </div>
      <div className={classes.told}>
        <TextInput
          size="touch"
          label={`Caption of photo ${number}`}
          placeholder="What it shows"
          maxLength={captionLength}
          value={photo.caption}
          onChange={(event) => onCaption(event.currentTarget.value)}
        />
        <Button
          className={classes.remove}
          size="touch"
          variant="subtle"
          color="over"
          aria-label={`Remove photo ${number}`}
          onClick={onRemove}
        >
          Remove
        </Button>
      </div>
    </li>
  )
}
