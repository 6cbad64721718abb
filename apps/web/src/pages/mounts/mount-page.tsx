import { Button } from '@mantine/core'
import { changeMountDraft, correctMount, type MountRecord } from '@shaftbook/contract/mounts'
import { printMount } from '@shaftbook/contract/papers'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { addressOf } from '../../api/call.ts'
import { MountChain } from '../../features/mounts/mount-chain.tsx'
import { MountDecisions } from '../../features/mounts/mount-decisions.tsx'
import { mountQuery } from '../../features/mounts/mount-queries.ts'
import { MountRecordView } from '../../features/mounts/mount-record-view.tsx'
import { PhotoStrip } from '../../features/photos/photo-strip.tsx'
import { usePrintInLight } from '../../lib/print-in-light.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './mount-page.module.css'

/** One mount record: read, printed, gone on with, corrected. */
export function MountPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, site } = useSite()
  const { data: record } = useSuspenseQuery(mountQuery(code, id))
  usePrintInLight()
  return (
    <>
      <PageHead
        title={record.signedAt ? `Mount at ${record.tag}` : `Draft of a mount at ${record.tag}`}
        sentence={
          <>
            {record.bearing.designation}, {record.machineName},{' '}
            <Timestamp at={record.mountedAt} timeZone={site.timeZone} relative={false} />
          </>
        }
        trail={[
          { label: 'Mounts', href: paths.mounts(code) },
          { label: record.tag, href: paths.position(code, record.positionId) },
        ]}
        actions={<RecordActions record={record} />}
      />
      <MountChain record={record} />
      <MountRecordView record={record} besideVerdict={<MountDecisions record={record} />} />
      <PagePart title="Photos">
        <PhotoStrip
          where={{ subjectId: record.correctsId ?? record.id }}
          label={`Photos of the mount at ${record.tag}`}
          empty="No photos were taken of this mount."
        />
      </PagePart>
    </>
  )
}

function RecordActions({ record }: { record: MountRecord }) {
  const { code, may } = useSite()
  const navigate = useNavigate()
  const paper = addressOf(printMount, { params: { site: code, id: record.id } })
  const go = (to: string) => () => void navigate({ to })
  return (
    <div className={classes.actions}>
      <Button component="a" href={paper} target="_blank" rel="noopener" variant="default">
        Print (PDF)
      </Button>
      {record.signedAt === null && may(changeMountDraft) && (
        <Button onClick={go(paths.mountDraft(code, record.id))}>Go on and sign</Button>
      )}
      {record.signedAt !== null && record.correctedById === null && may(correctMount) && (
        <Button variant="default" onClick={go(paths.mountCorrection(code, record.id))}>
          Correct
        </Button>
      )}
    </div>
  )
}
