import { SetupContents } from '../../features/setup/setup-contents.tsx'
import { PageHead } from '../../ui/page-head.tsx'

/** The contents of the setup. */
export function SetupPage() {
  return (
    <>
      <PageHead title="Setup" sentence="What the book goes by at this site." />
      <SetupContents />
    </>
  )
}
