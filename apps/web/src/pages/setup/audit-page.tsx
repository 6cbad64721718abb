import type { AuditEntry } from '@shaftbook/contract/access'
import { NativeSelect } from '@mantine/core'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import type { z } from 'zod'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { auditActions, auditTables } from '../../features/setup/audit-words.ts'
import { FieldChanges } from '../../features/setup/field-changes.tsx'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import type { AuditSearch } from './setup-search.ts'

type Entry = z.output<typeof AuditEntry>

const nameOf = (table: string) => auditTables[table] ?? table.replaceAll('_', ' ')

/** Who changed what and when. */
export function AuditPage() {
  const { code, site } = useSite()
  const { table, row }: AuditSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const entries = useInfiniteQuery(setupQueries.audit(code, { table, rowId: row }))
  const { rows, more } = listed(entries)
  return (
    <>
      <PartHead
        title="Changes"
        sentence="Every change of the site's records, newest first. Nobody can take an entry out."
      />
      <FilterBar
        active={[
          ...(table
            ? [{ key: 'table', label: `Of: ${nameOf(table)}`, onRemove: () => change({ table: undefined }) }]
            : []),
          ...(row ? [{ key: 'row', label: 'One record only', onRemove: () => change({ row: undefined }) }] : []),
        ]}
        onClear={() => change({ table: undefined, row: undefined })}
        search={
          <NativeSelect
            label="Changes of"
            value={table ?? ''}
            onChange={(event) => change({ table: event.currentTarget.value || undefined })}
            data={[
              { value: '', label: 'all records' },
              ...Object.entries(auditTables).map(([value, label]) => ({ value, label })),
            ]}
          />
        }
      />
      {entries.isPending && <LoadingRows what="changes" />}
      {entries.isError && <ErrorState problem={shownProblem(entries.error)} onRetry={() => void entries.refetch()} />}
      {entries.isSuccess && (
        <DataTable
          caption="Changes"
          columns={auditColumns(site.timeZone)}
          rows={rows}
          rowKey={({ id }) => id}
          more={more}
          empty={<EmptyState title="No change is on record here" text="Choose other records, or all of them." />}
        />
      )}
    </>
  )
}

function auditColumns(timeZone: string): DataColumn<Entry>[] {
  return [
    {
      key: 'at',
      header: 'When',
      cell: (entry) => <Timestamp at={entry.at} timeZone={timeZone} relative={false} />,
    },
    { key: 'person', header: 'Who', cell: (entry) => entry.person ?? 'the service' },
    {
      key: 'what',
      header: 'What',
      cell: (entry) => `${nameOf(entry.table)} ${auditActions[entry.action]}`,
      phone: 'title',
    },
    { key: 'change', header: 'Change', cell: (entry) => <FieldChanges before={entry.before} after={entry.after} /> },
  ]
}
