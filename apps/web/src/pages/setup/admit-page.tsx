import { admitPerson } from '@shaftbook/contract/access'
import { AdmitForm } from '../../features/setup/admit-form.tsx'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupTrail } from '../../features/setup/setup-trail.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'

/** Lets a person in. */
export function AdmitPage() {
  const { code, may } = useSite()
  if (!may(admitPerson))
    return <EmptyState heading="h1" title="Your role does not let people in" text="A manager of the site does." />
  return (
    <>
      <PartHead
        title="Let a person in"
        trail={setupTrail(code, { label: 'People', href: paths.setupPart(code, 'people') })}
      />
      <AdmitForm />
    </>
  )
}
