import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'

/** Parts and kits are entered by others. */
export function NotKeptByYou() {
  const { code } = useSite()
  return (
    <EmptyState
      heading="h1"
      title="Parts and kits are kept by the stores"
      text="Stores, engineers and managers enter and change them. You can read them all."
      action={<AppLink href={paths.stores(code)}>Stores</AppLink>}
    />
  )
}
