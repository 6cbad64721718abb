import { admitPerson } from '@shaftbook/contract/access'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import type { FieldGroup } from './form-spec.ts'
import { roleChoices, roleWords } from './people-words.ts'
import { RecordForm } from './record-form.tsx'

const groups: readonly FieldGroup[] = [
  {
    text: Object.values(roleWords)
      .map(({ label, does }) => `${label}: ${does}.`)
      .join(' '),
    fields: [
      { name: 'name', label: 'Name', kind: 'text' },
      { name: 'email', label: 'E-mail', kind: 'email', help: 'Used to sign in' },
      { name: 'role', label: 'Role', kind: 'choice', choices: roleChoices },
      {
        name: 'password',
        label: 'First password',
        kind: 'password',
        help: 'At least 10 characters. Who signs in at another site already keeps the password in use there.',
      },
    ],
  },
]

/** Lets a person in at the site. */
export function AdmitForm() {
  const { code } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const [id] = useState(() => newId())
  const back = paths.setupPart(code, 'people')
  return (
    <RecordForm
      groups={groups}
      start={{}}
      submitLabel="Let this person in"
      save={(body) => call(admitPerson, { params: { site: code }, body: { id, ...body } as never })}
      onSaved={() => {
        notice.done('The person can sign in now.')
        void navigate({ href: back, ignoreBlocker: true })
      }}
      cancelHref={back}
    />
  )
}
