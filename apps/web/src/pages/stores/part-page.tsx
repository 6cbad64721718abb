import { Button } from '@mantine/core'
import { parts } from '@shaftbook/contract/register-tables'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { partKindWords } from '../../features/stores/part-kinds.ts'
import { PartUses } from '../../features/stores/part-uses.tsx'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** A part and the positions that it fits. */
export function PartPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const { data: part } = useSuspenseQuery(storesQueries.part(code, id))
  return (
    <>
      <PageHead
        title={part.designation}
        sentence={part.description || undefined}
        trail={[
          { label: 'Stores', href: paths.stores(code) },
          { label: 'Parts', href: paths.parts(code) },
        ]}
        actions={
          may(parts.change) && (
            <Button component={AppLink} href={paths.changePart(code, id)} variant="default">
              Change part
            </Button>
          )
        }
        facts={[
          { label: 'Number', value: part.number },
          { label: 'Kind', value: partKindWords[part.kind] },
          { label: 'Bin', value: part.bin },
        ]}
      />
      <PagePart title="Positions that it fits">
        <PartUses partId={id} designation={part.designation} />
      </PagePart>
    </>
  )
}
