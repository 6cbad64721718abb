import { changeRole, type Person } from '@shaftbook/contract/access'
import { Button, NativeSelect } from '@mantine/core'
import type { Role } from '@shaftbook/contract/roles'
import { useInfiniteQuery, useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { roleChoices, roleWords } from './people-words.ts'
import { setupQueries } from './setup-queries.ts'

/** The people of the site; a manager changes their roles. */
export function PeopleTable() {
  const { code, may } = useSite()
  const people = useInfiniteQuery(setupQueries.people(code))
  const [changing, setChanging] = useState<Person | null>(null)
  if (people.isPending) return <LoadingRows what="people" />
  if (people.isError) return <ErrorState problem={shownProblem(people.error)} onRetry={() => void people.refetch()} />
  const { rows, more } = listed(people)
  const columns = peopleColumns(may(changeRole) ? setChanging : null)
  return (
    <>
      <DataTable caption="People" columns={columns} rows={rows} rowKey={({ id }) => id} more={more} empty={null} />
      {changing && <RoleDialog person={changing} onClose={() => setChanging(null)} />}
    </>
  )
}

function peopleColumns(onChange: ((person: Person) => void) | null): DataColumn<Person>[] {
  const columns: DataColumn<Person>[] = [
    { key: 'name', header: 'Name', cell: (person) => person.name, phone: 'title' },
    { key: 'email', header: 'E-mail', cell: (person) => person.email },
    {
      key: 'role',
      header: 'Role',
      cell: (person) => `${roleWords[person.role].label}${person.disabled ? ', may not sign in' : ''}`,
    },
  ]
  if (!onChange) return columns
  const act = (person: Person) => (
    <Button
      variant="default"
      size="compact-sm"
      onClick={() => onChange(person)}
      aria-label={`Change role of ${person.name}`}
    >
      Change role
    </Button>
  )
  return [...columns, { key: 'change', header: 'Change', cell: act }]
}

function RoleDialog({ person, onClose }: { person: Person; onClose: () => void }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [role, setRole] = useState<Role>(person.role)
  const change = useMutation({
    mutationFn: () => call(changeRole, { params: { site: code, id: person.id }, body: { role } }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      await client.invalidateQueries({ queryKey: ['session'] })
      notice.done(`${person.name} is ${roleWords[role].label.toLowerCase()} now.`)
      onClose()
    },
  })
  return (
    <Confirm
      opened
      title={`Role of ${person.name}`}
      confirmLabel="Change role"
      busy={change.isPending}
      blocked={role === person.role ? 'Choose another role.' : undefined}
      onConfirm={() => change.mutate()}
      onCancel={onClose}
    >
      <NativeSelect
        label="Role at this site"
        description={`${roleWords[role].label} ${roleWords[role].does}`}
        data={roleChoices}
        value={role}
        error={change.error?.message}
        onChange={(event) => setRole(event.currentTarget.value as Role)}
      />
    </Confirm>
  )
}
