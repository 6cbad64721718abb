import { paths } from '../paths.ts'
import { AppLink } from '../ui/link.tsx'
import { EmptyState } from '../ui/empty-state.tsx'
import { PlainPage } from '../ui/plain-page.tsx'

/** There is no page here, and no site's frame round it. */
export function LostPage() {
  return (
    <PlainPage>
      <NotFoundPage />
    </PlainPage>
  )
}

export function NotFoundPage() {
  return (
    <EmptyState
      heading="h1"
      title="There is no page at this address"
      text="The link may be old, or the address mistyped."
      action={<AppLink href={paths.home}>Go to the flags</AppLink>}
    />
  )
}
