import type { PositionOverview } from '@shaftbook/contract/position-views'
import { createRemoval } from '@shaftbook/contract/removals'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { KeptPhotoField } from '../../features/photos/kept-photo-field.tsx'
import { useKeptPhotos } from '../../features/photos/use-kept-photos.ts'
import { RemovalForm } from '../../features/removals/removal-form.tsx'
import { removalQueries } from '../../features/removals/removal-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'

/** Logs that the bearing left its position. */
export function RemovalPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, site, may } = useSite()
  const { data: place } = useSuspenseQuery(removalQueries.place(code, id))
  const { position, machine } = place
  // where somebody else took the bearing out meanwhile, what was typed stays on the screen with the sentence about it
  const [begunWith, setBegunWith] = useState(place.fitment)
  if (place.fitment && place.fitment.id !== begunWith?.id) setBegunWith(place.fitment)
  const fitment = place.fitment ?? (begunWith?.positionId === id ? begunWith : null)
  const back = <AppLink href={paths.position(code, id)}>Back to {position.tag}</AppLink>
  if (!may(createRemoval))
    return (
      <EmptyState
        heading="h1"
        title="Removals are logged by the people at the shaft"
        text="Technicians, engineers and managers log them. You can read every one at its position."
        action={back}
      />
    )
  if (!fitment)
    return (
      <EmptyState
        heading="h1"
        title={`Nothing is fitted at ${position.tag}`}
        text="So nothing can be taken out. If a bearing runs there, log its mount first."
        action={back}
      />
    )
  return (
    <>
      <PageHead
        title={`Removal at ${position.tag}`}
        sentence={
          <>
            {fitment.designation}
            {fitment.serial && `, no. ${fitment.serial}`}, fitted{' '}
            <Timestamp at={fitment.fittedAt} timeZone={site.timeZone} dateOnly />. If another bearing goes in at once,
            log a remount instead: it closes this stay too.
          </>
        }
        trail={[
          { label: machine.name, href: paths.machinePositions(code, machine.id) },
          { label: position.tag, href: paths.position(code, id) },
        ]}
      />
      <FormWithPhotos key={id} place={place} stay={fitment} />
    </>
  )
}

interface FormWithPhotosProps {
  place: PositionOverview
  stay: NonNullable<PositionOverview['fitment']>
}

function FormWithPhotos({ place, stay }: FormWithPhotosProps) {
  const { code } = useSite()
  const { id: positionId, tag } = place.position
  const kept = useKeptPhotos(`removal/${positionId}`)
  const sendPhotos = (subjectId: string) =>
    kept.queue({
      site: code,
      positionId,
      tag,
      subjectKind: 'removal',
      subjectId,
      address: paths.remove(code, positionId),
    })
  return (
    <RemovalForm
      place={place}
      stay={stay}
      wrong={null}
      sendPhotos={sendPhotos}
      photos={
        <KeptPhotoField
          kept={kept}
          label="Photos"
          description="As it was found, before it is cleaned: grease, raceways, bore, both sides. They are made small and kept on this device until the removal is signed."
        />
      }
    />
  )
}
