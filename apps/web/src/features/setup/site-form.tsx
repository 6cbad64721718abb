import { changeSite, type Site } from '@shaftbook/contract/access'
import { useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { call } from '../../api/call.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { RecordForm } from './record-form.tsx'
import { siteGroups } from './site-fields.ts'

/** Changes the site and the settings that its formulas go by. */
export function SiteForm({ site }: { site: Site }) {
  const { code } = useSite()
  const client = useQueryClient()
  const navigate = useNavigate()
  const notice = useNotice()
  const save = ({ name, timeZone, ...settings }: Record<string, unknown>) =>
    call(changeSite, {
      params: { site: code },
      body: { name, timeZone, settings } as never,
    })
  const saved = () => {
    // The name and the time zone stand in the session too.
    void client.invalidateQueries({ queryKey: ['session'] })
    notice.done('The site is changed.')
    void navigate({ href: paths.setup(code), ignoreBlocker: true })
  }
  return (
    <RecordForm
      groups={siteGroups}
      start={{ name: site.name, timeZone: site.timeZone, ...site.settings }}
      submitLabel="Change the site"
      save={save}
      onSaved={saved}
      cancelHref={paths.setup(code)}
    />
  )
}
