import type { MountRecord } from '@shaftbook/contract/mounts'
import { useQuery } from '@tanstack/react-query'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { mountQuery } from './mount-queries.ts'
import classes from './mount-record.module.css'

/** What this record corrects and what corrects it, with who, when and why. */
export function MountChain({ record }: { record: MountRecord }) {
  const { code, site } = useSite()
  const later = useQuery({ ...mountQuery(code, record.correctedById ?? ''), enabled: record.correctedById !== null })
  if (record.correctsId === null && record.correctedById === null) return null
  return (
    <div className={classes.chain}>
      {record.correctedById !== null && (
        <p>
          <strong>This record does not count any more.</strong>{' '}
          <AppLink href={paths.mount(code, record.correctedById)}>A later one corrects it</AppLink>
          {later.data?.signedAt && (
            <>
              : {later.data.signedBy}, <Timestamp at={later.data.signedAt} timeZone={site.timeZone} />. Reason:{' '}
              {later.data.correctionReason}
            </>
          )}
        </p>
      )}
      {record.correctsId !== null && (
        <p>
          It corrects <AppLink href={paths.mount(code, record.correctsId)}>an earlier record</AppLink>. Reason:{' '}
          {record.correctionReason}
        </p>
      )}
    </div>
  )
}
