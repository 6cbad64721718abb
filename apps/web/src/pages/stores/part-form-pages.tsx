import { PartKind, parts } from '@shaftbook/contract/register-tables'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { v7 } from 'uuid'
import { call } from '../../api/call.ts'
import type { FieldGroup } from '../../features/setup/form-spec.ts'
import { RecordForm } from '../../features/setup/record-form.tsx'
import { partKindWords } from '../../features/stores/part-kinds.ts'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { NotKeptByYou } from './not-kept-by-you.tsx'

const fields: readonly FieldGroup[] = [
  {
    fields: [
      { name: 'number', label: 'Number', kind: 'text', help: "The store's own; unique at the site" },
      {
        name: 'designation',
        label: 'Code',
        kind: 'text',
        help: 'As it is stamped or printed: 22220 K/C3, H3120, KM20',
      },
      {
        name: 'kind',
        label: 'Kind',
        kind: 'choice',
        choices: PartKind.options.map((value) => ({ value, label: partKindWords[value] })),
      },
      { name: 'bin', label: 'Bin', kind: 'text', optional: 'null', help: 'Where it lies; pick lists go by it' },
      {
        name: 'description',
        label: 'What it is',
        kind: 'long-text',
        optional: 'blank',
        help: 'Sizes and thread, metric or inch: what tells it from its look-alike',
      },
    ],
  },
]

/** Enters a part. */
export function NewPartPage() {
  const { code, may } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const [id] = useState(() => v7())
  if (!may(parts.create)) return <NotKeptByYou />
  return (
    <>
      <PageHead title="Enter a part" trail={trailOf(code)} />
      <RecordForm
        groups={fields}
        start={{}}
        submitLabel="Enter the part"
        save={(body) => call(parts.create, { params: { site: code }, body: { id, ...body } as never })}
        onSaved={() => {
          notice.done('The part is in the book. It fits positions once a kit names it.')
          void navigate({ to: paths.part(code, id), ignoreBlocker: true })
        }}
        cancelHref={paths.parts(code)}
      />
    </>
  )
}

/** Changes a part. */
export function ChangePartPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const { data: part } = useSuspenseQuery(storesQueries.part(code, id))
  const [read] = useState(part)
  if (!may(parts.change)) return <NotKeptByYou />
  return (
    <>
      <PageHead
        title={`Change ${read.designation}`}
        trail={[...trailOf(code), { label: read.designation, href: paths.part(code, id) }]}
      />
      <RecordForm
        groups={fields}
        start={read}
        submitLabel="Save the part"
        save={(body) => call(parts.change, { params: { site: code, id }, version: read.version, body })}
        onSaved={() => {
          notice.done('The part is changed.')
          void navigate({ to: paths.part(code, id), ignoreBlocker: true })
        }}
        cancelHref={paths.part(code, id)}
      />
    </>
  )
}

function trailOf(site: string) {
  return [
    { label: 'Stores', href: paths.stores(site) },
    { label: 'Parts', href: paths.parts(site) },
  ]
}
