import { changeKit, createKit } from '@shaftbook/contract/kits'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { v7 } from 'uuid'
import { call } from '../../api/call.ts'
import { entryOfKit, newLine } from '../../features/stores/kit-entry.ts'
import { KitForm } from '../../features/stores/kit-form.tsx'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { NotKeptByYou } from './not-kept-by-you.tsx'

/** Enters a kit. */
export function NewKitPage() {
  const { code, may } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const [id] = useState(() => v7())
  const [start] = useState(() => ({ name: '', note: '', lines: [newLine(v7())] }))
  if (!may(createKit)) return <NotKeptByYou />
  return (
    <>
      <PageHead title="Enter a kit" trail={trailOf(code)} />
      <KitForm
        start={start}
        submitLabel="Enter the kit"
        save={(body) => call(createKit, { params: { site: code }, body: { id, ...body } })}
        onSaved={async () => {
          notice.done('The kit is in the book. An engineer gives it to positions.')
          await navigate({ to: paths.kit(code, id), ignoreBlocker: true })
        }}
        cancelHref={paths.kits(code)}
      />
    </>
  )
}

/** Changes a kit: the lines given replace the old ones. */
export function ChangeKitPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const { data: kit } = useSuspenseQuery(storesQueries.kit(code, id))
  const [read] = useState(kit)
  if (!may(changeKit)) return <NotKeptByYou />
  return (
    <>
      <PageHead
        title={`Change ${read.name}`}
        sentence="The lines as they stand here replace the old ones at every position that takes this kit."
        trail={[...trailOf(code), { label: read.name, href: paths.kit(code, id) }]}
      />
      <KitForm
        start={entryOfKit(read)}
        submitLabel="Save the kit"
        save={(body) => call(changeKit, { params: { site: code, id }, version: read.version, body })}
        onSaved={async () => {
          notice.done('The kit is changed.')
          await navigate({ to: paths.kit(code, id), ignoreBlocker: true })
        }}
        cancelHref={paths.kit(code, id)}
      />
    </>
  )
}

function trailOf(site: string) {
  return [
    { label: 'Stores', href: paths.stores(site) },
    { label: 'Kits', href: paths.kits(site) },
  ]
}
