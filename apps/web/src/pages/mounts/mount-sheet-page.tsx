import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { correctMount, type MountRecord } from '@shaftbook/contract/mounts'
import { mountQuery } from '../../features/mounts/mount-queries.ts'
import { SheetHead } from '../../features/mounts/sheet-head.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { SheetWithPhotos } from './sheet-with-photos.tsx'

export function MountDraftPage() {
  return <RecordSheet purpose="draft" />
}

export function MountCorrectionPage() {
  return <RecordSheet purpose="correction" />
}

/** Goes on with a draft, or corrects a signed record. */
function RecordSheet({ purpose }: { purpose: 'draft' | 'correction' }) {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code } = useSite()
  const { data: record } = useSuspenseQuery(mountQuery(code, id))
  return <OpenedSheet key={id} purpose={purpose} read={record} />
}

/** The record as it was when the page was opened: signing it must not pull the sheet away before the page is left. */
function OpenedSheet({ purpose, read }: { purpose: 'draft' | 'correction'; read: MountRecord }) {
  const { code, may } = useSite()
  const [record] = useState(read)
  const { id } = record
  const signed = record.signedAt !== null
  const open = may(correctMount) && (purpose === 'draft' ? !signed : signed && record.correctedById === null)
  if (!open)
    return (
      <EmptyState
        heading="h1"
        title={purpose === 'draft' ? 'This is no draft to go on with' : 'This record cannot be corrected here'}
        text={
          purpose === 'draft'
            ? 'It is signed already: what is wrong in it is corrected by a further record.'
            : 'It is a draft still, a later record corrects it already, or your role does not sign mounts.'
        }
        action={<AppLink href={paths.mount(code, id)}>Open the mount record</AppLink>}
      />
    )
  return (
    <>
      <SheetHead
        title={purpose === 'draft' ? `Draft for ${record.tag}` : `Correction of the mount at ${record.tag}`}
        sentence={`${record.bearing.designation}, ${record.machineName}.`}
        back={{ label: 'Mount record', href: paths.mount(code, id) }}
      />
      <SheetWithPhotos purpose={purpose} positionId={record.positionId} record={record} tag={record.tag} />
    </>
  )
}
