import { admitPerson } from '@shaftbook/contract/access'
import { PartHead } from '../../features/setup/part-head.tsx'
import { PeopleTable } from '../../features/setup/people-table.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'

/** Who belongs to the site. */
export function PeoplePage() {
  const { code, may } = useSite()
  return (
    <>
      <PartHead
        title="People"
        sentence="Everybody here reads everything of the site; the role says what else."
        act={may(admitPerson) && { label: 'Let a person in', href: paths.admitPerson(code) }}
      />
      <PeopleTable />
    </>
  )
}
