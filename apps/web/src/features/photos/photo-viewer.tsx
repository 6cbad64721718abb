import { Button } from '@mantine/core'
import { useHotkeys, useMediaQuery } from '@mantine/hooks'
import type { Photo } from '@shaftbook/contract/photos'
import { useState } from 'react'
import { useSite } from '../../session/site-access.tsx'
import { Dialog } from '../../ui/over-page.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { photoAddress } from './photo-queries.ts'
import classes from './photo-viewer.module.css'
import { photoText, workOf } from './photo-words.ts'
import { WithdrawPhoto } from './withdraw-photo.tsx'

interface PhotoViewerProps {
  photos: readonly Photo[]
  /** The photo that is open; null: none. */
  openId: string | null
  onOpen: (id: string | null) => void
}

/** One photo large, over the page: the arrow keys go on, Escape closes. */
export function PhotoViewer({ photos, openId, onOpen }: PhotoViewerProps) {
  const phone = useMediaQuery('(max-width: 699px)', undefined, { getInitialValueInEffect: false })
  const at = photos.findIndex(({ id }) => id === openId)
  const photo = photos[at]
  return (
    <Dialog
      opened={photo !== undefined}
      onClose={() => onOpen(null)}
      title={photo ? `Photo ${at + 1} of ${photos.length} at ${photo.tag}` : ''}
      size={1080}
      fullScreen={phone}
      returnFocus={false}
      closeButtonProps={{ 'aria-label': 'Close' }}
      transitionProps={{ duration: 0 }}
    >
      {photo && <Opened photos={photos} at={at} onOpen={onOpen} />}
    </Dialog>
  )
}

function Opened({ photos, at, onOpen }: { photos: readonly Photo[]; at: number; onOpen: (id: string) => void }) {
  const go = (to: number) => {
    const next = photos[to]
    if (next) onOpen(next.id)
  }
  useHotkeys([
    ['ArrowLeft', () => go(at - 1)],
    ['ArrowRight', () => go(at + 1)],
  ])
  const photo = photos[at]
  if (!photo) return null
  return (
    <div className={classes.viewer}>
      <LargePhoto key={photo.id} photo={photo} />
      {photos.length > 1 && (
        <div className={classes.turn}>
          <Button size="touch" variant="default" disabled={at === 0} onClick={() => go(at - 1)}>
            Previous
          </Button>
          <Button size="touch" variant="default" disabled={at === photos.length - 1} onClick={() => go(at + 1)}>
            Next
          </Button>
        </div>
      )}
      <WithdrawPhoto key={`withdraw ${photo.id}`} photo={photo} />
    </div>
  )
}

function LargePhoto({ photo }: { photo: Photo }) {
  const { code, site } = useSite()
  const [isMissing, setMissing] = useState(false)
  const { takenAt, addedBy, withdrawnReason, withdrawnBy } = photo
  return (
    <figure className={classes.figure}>
      <div className={classes.frame}>
        {withdrawnReason !== null && (
          <p className={classes.gone}>
            Withdrawn by {withdrawnBy}: {withdrawnReason}
          </p>
        )}
        {withdrawnReason === null && isMissing && (
          <p className={classes.gone}>The picture is not to be had now: look again when there is a network.</p>
        )}
        {withdrawnReason === null && !isMissing && (
          <img
            src={photoAddress(code, photo.id, 'full')}
            alt={photoText(photo, site.timeZone)}
            width={photo.widthPx}
            height={photo.heightPx}
            onError={() => setMissing(true)}
          />
        )}
      </div>
      <figcaption>
        {photo.caption !== '' && <p className={classes.caption}>{photo.caption}</p>}
        <p className={classes.facts}>
          {workOf(photo)}. Taken <Timestamp at={takenAt} timeZone={site.timeZone} relative={false} />, added by{' '}
          {addedBy}.
        </p>
      </figcaption>
    </figure>
  )
}
