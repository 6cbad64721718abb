import { correctRemoval } from '@shaftbook/contract/removals'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { PhotoStrip } from '../../features/photos/photo-strip.tsx'
import { positionQueries } from '../../features/positions/position-queries.ts'
import { endWords, modeWords } from '../../features/removals/end-words.ts'
import { RemovalForm } from '../../features/removals/removal-form.tsx'
import { removalQueries } from '../../features/removals/removal-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'

/** Corrects what a signed removal says, by a further record. */
export function RemovalCorrectionPage() {
  const { id = '', removalId = '' }: { id?: string; removalId?: string } = useParams({ strict: false })
  const { code, site, may } = useSite()
  const { data: place } = useSuspenseQuery(removalQueries.place(code, id))
  const { data: removal } = useSuspenseQuery(removalQueries.one(code, removalId))
  const { data: history } = useSuspenseQuery(positionQueries.history(code, id))
  const stay = history.fitments.find((fitment) => fitment.id === removal.fitmentId)
  const { position } = place
  if (!may(correctRemoval) || !stay)
    return (
      <EmptyState
        heading="h1"
        title="This removal cannot be corrected here"
        text={stay ? 'Your role does not sign removals.' : `It does not belong to ${position.tag}.`}
        action={<AppLink href={paths.position(code, id)}>Back to {position.tag}</AppLink>}
      />
    )
  return (
    <>
      <PageHead
        title={`Correction of a removal at ${position.tag}`}
        sentence={
          <>
            {stay.designation}
            {stay.serial && `, no. ${stay.serial}`}, taken out{' '}
            <Timestamp at={removal.removedAt} timeZone={site.timeZone} relative={false} />. Signed by {removal.signedBy}
            : {endWords[removal.endKind].word.toLowerCase()}
            {removal.endKind === 'failed' && `, ${modeWords(removal)}`}.
          </>
        }
        trail={[
          { label: 'Positions', href: paths.positions(code) },
          { label: position.tag, href: paths.position(code, id) },
        ]}
      />
      <PagePart title="Photos">
        <PhotoStrip
          where={{ subjectId: removal.correctsId ?? removal.id }}
          label={`Photos of the removal at ${position.tag}`}
          empty="No photos were taken of this removal."
        />
      </PagePart>
      <RemovalForm key={removal.id} place={place} stay={stay} wrong={removal} />
    </>
  )
}
