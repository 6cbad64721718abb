import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { RecordForm } from './record-form.tsx'
import { registerForm } from './register-fields.ts'
import type { Offered } from './register-form.ts'
import { changeRow, createRow, type RegisterName } from './registers.ts'
import { useOffered } from './use-offered.ts'

interface RowFormProps {
  name: RegisterName
  /** Where the page goes afterwards, and where "Go back" leads. */
  backHref: string
  /** The field that names the place a new row belongs to, with its id. */
  within?: Readonly<Record<string, string>>
  /** The row to change; without one a new row is entered. */
  row?: { id: string; version: number } & Record<string, unknown>
}

const nothingOffered: Offered = { bearingTypes: [], kits: [], charts: [] }

/** The form that enters or changes a row of a register table. */
export function RowForm(props: RowFormProps) {
  const { code } = useSite()
  const wanted = props.name === 'positions'
  const offered = useOffered(code, wanted)
  if (wanted && offered.isPending) return <LoadingRows what="what the form offers" />
  if (offered.isError)
    return <ErrorState problem={shownProblem(offered.error)} onRetry={() => void offered.refetch()} />
  return <ReadyRowForm {...props} offered={offered.data ?? nothingOffered} />
}

function ReadyRowForm({ name, backHref, within, row, offered }: RowFormProps & { offered: Offered }) {
  const { code } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const [id] = useState(() => newId())
  const { noun, groups, start } = registerForm(name, offered)
  const save = (body: Record<string, unknown>) =>
    row ? changeRow(code, name, row, body) : createRow(code, name, { id, ...within, ...body })
  const saved = () => {
    notice.done(row ? `The ${noun} is changed.` : `The ${noun} is entered.`)
    void navigate({ href: backHref, ignoreBlocker: true })
  }
  return (
    <RecordForm
      groups={groups}
      start={row ?? start}
      submitLabel={row ? `Change the ${noun}` : `Enter the ${noun}`}
      save={save}
      onSaved={saved}
      cancelHref={backHref}
    />
  )
}
