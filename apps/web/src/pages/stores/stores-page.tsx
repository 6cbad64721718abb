import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useNavigate, useSearch } from '@tanstack/react-router'
import { shownProblem } from '../../api/shown-problem.ts'
import { PlannedNext } from '../../features/mount-plans/planned-here.tsx'
import { Found } from '../../features/stores/found.tsx'
import { stepThroughHits } from '../../features/stores/hit-list.tsx'
import { meantHit, type Hit } from '../../features/stores/meant-hit.ts'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import classes from '../../features/stores/stores.module.css'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import { StoresNav } from './stores-nav.tsx'
import type { FindSearch } from './stores-search.ts'

/** One search over positions and parts: what goes on here, and where does this fit. */
export function StoresPage() {
  const { code } = useSite()
  const { q }: FindSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const navigate = useNavigate()
  const client = useQueryClient()
  const hits = useQuery({ ...storesQueries.hits(code, q ?? ''), enabled: q !== undefined })
  const enter = async (text: string) => {
    change({ q: text || undefined })
    const meant = text && meantHit(text, await client.fetchQuery(storesQueries.hits(code, text)))
    if (meant) await navigate({ to: hrefOf(code, meant) })
  }
  return (
    <>
      <PageHead
        title="Stores"
        sentence="From a position to what goes on it, and from a part to the positions it fits."
      />
      <StoresNav active="find" />
      <PlannedNext />
      {/* Arrow keys go on from the field to what is found. */}
      {/* oxlint-disable-next-line jsx-a11y/no-static-element-interactions */}
      <div onKeyDown={stepThroughHits}>
        <search className={classes.find}>
          <SearchField
            label="Position or part"
            placeholder="RP02-HD-A, 22220 K/C3, H3120, HP-10020"
            value={q ?? ''}
            slash
            first
            onSearch={(text) => change({ q: text || undefined })}
            onEnter={(text) => void enter(text)}
          />
          <p className={classes.keys}>Arrow keys go through what is found; Enter opens it.</p>
        </search>
        {q === undefined && (
          <p className={classes.hint}>
            Type a tag or a machine to get the kit of a position, or a part to see every position that it fits. The book
            knows kits, parts and bins; how many lie on the shelf it does not know yet.
          </p>
        )}
        {q !== undefined && hits.isPending && <LoadingRows what="what fits" />}
        {hits.isError && <ErrorState problem={shownProblem(hits.error)} onRetry={() => void hits.refetch()} />}
        {q !== undefined && hits.isSuccess && <Found hits={hits.data} search={q} />}
      </div>
    </>
  )
}

function hrefOf(site: string, { kind, id }: Hit): string {
  if (kind === 'position') return paths.pickList(site, id)
  return kind === 'part' ? paths.part(site, id) : paths.kit(site, id)
}
