import { Button } from '@mantine/core'
import { useMediaQuery } from '@mantine/hooks'
import { addPhoto } from '@shaftbook/contract/photos'
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { Dialog } from '../../ui/over-page.tsx'
import { KeptPhotoField } from './kept-photo-field.tsx'
import classes from './photo-viewer.module.css'
import { useKeptPhotos } from './use-kept-photos.ts'

interface AddPhotosProps {
  positionId: string
  tag: string
}

/** Adds photos of the position itself, outside any work: a nameplate, the guard, how to get there. */
export function AddPhotos({ positionId, tag }: AddPhotosProps) {
  const { may } = useSite()
  const [isOpen, setOpen] = useState(false)
  const phone = useMediaQuery('(max-width: 699px)', undefined, { getInitialValueInEffect: false })
  if (!may(addPhoto)) return null
  return (
    <>
      <Button variant="subtle" className={classes.add} onClick={() => setOpen(true)}>
        Add photos
      </Button>
      <Dialog
        opened={isOpen}
        onClose={() => setOpen(false)}
        title={`Photos of ${tag}`}
        size={560}
        fullScreen={phone}
        closeOnClickOutside={false}
        closeButtonProps={{ 'aria-label': 'Close' }}
        transitionProps={{ duration: 0 }}
      >
        {isOpen && <AddForm positionId={positionId} tag={tag} onDone={() => setOpen(false)} />}
      </Dialog>
    </>
  )
}

function AddForm({ positionId, tag, onDone }: AddPhotosProps & { onDone: () => void }) {
  const { code } = useSite()
  const notice = useNotice()
  const kept = useKeptPhotos(`position/${positionId}`)
  const sending = useMutation({
    mutationFn: () =>
      kept.queue({
        site: code,
        positionId,
        tag,
        subjectKind: 'position',
        subjectId: positionId,
        address: paths.position(code, positionId),
      }),
    onSuccess: () => {
      notice.done(`The photos of ${tag} are kept on this device and sent by themselves.`)
      onDone()
    },
  })
  return (
    <div className={classes.viewer}>
      <KeptPhotoField
        kept={kept}
        label="Photos"
        description="Of the position itself: its nameplate, the guard, the way there. They are made small before they are sent."
        disabled={sending.isPending}
      />
      {sending.isError && <p role="alert">{sending.error.message}</p>}
      <div className={`${classes.turn} ${classes.end}`}>
        <Button
          size="touch"
          loading={sending.isPending}
          disabled={kept.photos.length === 0}
          onClick={() => sending.mutate()}
        >
          Add to the book
        </Button>
        <Button size="touch" variant="default" onClick={onDone}>
          Go back
        </Button>
      </div>
    </div>
  )
}
