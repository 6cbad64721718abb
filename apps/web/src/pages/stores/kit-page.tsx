import { Button } from '@mantine/core'
import { changeKit } from '@shaftbook/contract/kits'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { KitLines } from '../../features/stores/kit-lines.tsx'
import { KitPositions } from '../../features/stores/kit-positions.tsx'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** A kit with its lines, and the positions that take it. */
export function KitPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const { data: kit } = useSuspenseQuery(storesQueries.kit(code, id))
  return (
    <>
      <PageHead
        title={kit.name}
        sentence={kit.note || undefined}
        trail={[
          { label: 'Stores', href: paths.stores(code) },
          { label: 'Kits', href: paths.kits(code) },
        ]}
        actions={
          may(changeKit) && (
            <Button component={AppLink} href={paths.changeKit(code, id)} variant="default">
              Change kit
            </Button>
          )
        }
      />
      <PagePart title="Lines">
        <KitLines lines={kit.lines} caption={`Lines of ${kit.name}`} />
      </PagePart>
      <PagePart title="Positions that take it">
        <KitPositions kitId={id} />
      </PagePart>
    </>
  )
}
