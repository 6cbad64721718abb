import { useQuery, useSuspenseQuery } from '@tanstack/react-query'
import { useParams, useSearch } from '@tanstack/react-router'
import { createMount } from '@shaftbook/contract/mounts'
import { draftsQuery, placeQuery, planQuery } from '../../features/mounts/mount-queries.ts'
import { SheetHead } from '../../features/mounts/sheet-head.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import type { SheetSearch } from './sheet-search.ts'
import { SheetWithPhotos } from './sheet-with-photos.tsx'

/** Logs the fitting of a bearing at a position. */
export function RemountPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { plan: planId, step }: SheetSearch = useSearch({ strict: false })
  const { code, site, may } = useSite()
  const { data: place } = useSuspenseQuery(placeQuery(code, id))
  const { data: plan } = useSuspenseQuery(planQuery(code, planId ?? null))
  const drafts = useQuery(draftsQuery(code, id))
  const { position, machine, fitment } = place
  if (!may(createMount))
    return (
      <EmptyState
        heading="h1"
        title="Mounts are logged by the people at the shaft"
        text="Technicians, engineers and managers log them. You can read every mount record."
        action={<AppLink href={paths.mounts(code)}>Mount records</AppLink>}
      />
    )
  return (
    <>
      <SheetHead
        title={fitment ? `Remount at ${position.tag}` : `First mount at ${position.tag}`}
        sentence={`${position.name}, ${machine.name}. ${position.locating ? 'Locating' : 'Non-locating'}.`}
        back={{ label: position.tag, href: paths.position(code, id) }}
      />
      {step === undefined &&
        drafts.data?.items.map((draft) => (
          <p key={draft.id}>
            <AppLink href={paths.mountDraft(code, draft.id)}>
              Go on with the sheet that {draft.fitter} handed over,{' '}
              <Timestamp at={draft.mountedAt} timeZone={site.timeZone} />
            </AppLink>
          </p>
        ))}
      <SheetWithPhotos key={id} purpose="new" positionId={id} record={null} plan={plan} tag={position.tag} />
    </>
  )
}
