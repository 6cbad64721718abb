import { useSearch } from '@tanstack/react-router'
import { BenchContents } from '../../features/bench/bench-contents.tsx'
import classes from '../../features/bench/bench.module.css'
import { TableGaps } from '../../features/bench/table-gaps.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { PageHead } from '../../ui/page-head.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import type { ContentsSearch } from './bench-search.ts'

/** Every calculation of the book, to try with numbers of one's own. */
export function BenchPage() {
  const { q }: ContentsSearch = useSearch({ strict: false })
  const change = useSearchChange()
  return (
    <>
      <PageHead
        title="Bench"
        sentence="Every calculation of the book, to try with numbers of your own. The makers' manuals and the site's rules come first."
      />
      <search className={classes.search}>
        <SearchField
          label="Calculation"
          placeholder="nut, dose, torque"
          value={q ?? ''}
          slash
          onSearch={(text) => change({ q: text || undefined })}
        />
      </search>
      <BenchContents search={q ?? ''} />
      <TableGaps />
    </>
  )
}
