import { Button } from '@mantine/core'
import type { Photo } from '@shaftbook/contract/photos'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useState, type ReactNode } from 'react'
import { listed } from '../../api/listed.ts'
import { NoAnswerError } from '../../api/problem-error.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { photoAddress, photosQuery, type PhotosWhere } from './photo-queries.ts'
import classes from './photo-strip.module.css'
import { PhotoViewer } from './photo-viewer.tsx'
import { occasionOf } from './photo-words.ts'

interface PhotoStripProps {
  where: PhotosWhere
  /** "Photos of this mount" */
  label: string
  /** Shown where there are none. */
  empty: ReactNode
}

/** The photos of a record or of a position, newest first, each opening large. */
export function PhotoStrip({ where, label, empty }: PhotoStripProps) {
  const { code } = useSite()
  const query = useInfiniteQuery(photosQuery(code, where))
  const { rows, more } = listed(query)
  const [openId, setOpenId] = useState<string | null>(null)
  const open = (id: string | null) => {
    setOpenId(id)
    // back to the photo that was looked at last
    if (id === null && openId !== null) document.querySelector<HTMLElement>(`#${tileId(openId)}`)?.focus()
  }
  if (query.isPending) return <LoadingRows what="photos" rows={2} />
  if (query.isError && query.error instanceof NoAnswerError)
    return <p className={classes.soft}>Photos are not kept on this device: they are shown when there is a network.</p>
  if (query.isError)
    return <ErrorState heading="h3" problem={shownProblem(query.error)} onRetry={() => void query.refetch()} />
  if (rows.length === 0) return <p className={classes.soft}>{empty}</p>
  return (
    <>
      <ul className={classes.strip} aria-label={label}>
        {rows.map((photo) => (
          <PhotoTile key={photo.id} photo={photo} onOpen={() => setOpenId(photo.id)} />
        ))}
      </ul>
      {more.hasMore && (
        <Button variant="default" loading={more.loading} onClick={more.onMore}>
          Older photos
        </Button>
      )}
      <PhotoViewer photos={rows} openId={openId} onOpen={open} />
    </>
  )
}

function tileId(photoId: string): string {
  return `photo-${photoId}`
}

function PhotoTile({ photo, onOpen }: { photo: Photo; onOpen: () => void }) {
  const { code, site } = useSite()
  const [isMissing, setMissing] = useState(false)
  const isWithdrawn = photo.withdrawnAt !== null
  return (
    <li>
      <button type="button" id={tileId(photo.id)} className={classes.tile} onClick={onOpen}>
        <span className={classes.frame}>
          {isWithdrawn || isMissing ? (
            <span className={classes.gone}>{isWithdrawn ? 'Withdrawn' : 'Not shown now'}</span>
          ) : (
            <img
              src={photoAddress(code, photo.id, 'small')}
              alt=""
              width={photo.widthPx}
              height={photo.heightPx}
              loading="lazy"
              onError={() => setMissing(true)}
            />
          )}
        </span>
        <span className={classes.caption}>{photo.caption || occasionOf(photo, site.timeZone)}</span>
      </button>
    </li>
  )
}
