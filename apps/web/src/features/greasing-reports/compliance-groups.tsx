import type { ComplianceGrouping, GreasingCompliance } from '@shaftbook/contract/greasing-reports'
import { useMediaQuery } from '@mantine/hooks'
import { useMemo } from 'react'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { fewWords, groupingWords, percentText, resultSeries } from './compliance-words.ts'
import classes from './reports.module.css'

type Group = GreasingCompliance['groups'][number]

interface ComplianceGroupsProps {
  compliance: GreasingCompliance
  by: ComplianceGrouping
}

/** The windows by area, position or person, those with the most windows not met first. */
export function ComplianceGroups({ compliance, by }: ComplianceGroupsProps) {
  const { code } = useSite()
  const phone = useMediaQuery('(max-width: 699px)', undefined, { getInitialValueInEffect: false })
  const columns = useMemo(() => groupColumns(by, code, phone), [by, code, phone])
  const { groups, groupsInAll } = compliance
  return (
    <>
      {groupsInAll > groups.length && (
        <p className={classes.note}>
          The {groups.length} with the most windows not met, of {groupsInAll}. Choose an area to see the others.
        </p>
      )}
      <DataTable<Group>
        caption={`Windows by ${groupingWords[by].toLowerCase()}, the most not met first`}
        columns={columns}
        rows={groups}
        rowKey={({ id }) => id ?? 'nobody'}
        empty={
          <EmptyState heading="h3" title="No window was due" text="Choose a longer period, or take a filter away." />
        }
      />
    </>
  )
}

function groupColumns(by: ComplianceGrouping, code: string, phone: boolean): DataColumn<Group>[] {
  const counts = phone ? [windowsInWords] : countColumns
  return [
    {
      key: 'name',
      header: groupingWords[by],
      phone: 'title',
      cell: ({ id, name }) => {
        if (id === null) return by === 'round' ? 'On no round' : 'Nobody came'
        return by === 'position' ? <AppLink href={paths.position(code, id)}>{name}</AppLink> : name
      },
      sortValue: ({ name }) => name ?? undefined,
    },
    {
      key: 'percent',
      header: 'Met',
      phone: 'aside',
      align: 'right',
      cell: (group) => (
        <>
          {by === 'position' && group.id !== null ? (
            <AppLink
              href={paths.greasingCompliance(code, group.id)}
              aria-label={`${percentText(group)}, ${group.name} by month`}
            >
              {percentText(group)}
            </AppLink>
          ) : (
            <strong>{percentText(group)}</strong>
          )}
          {fewWords(group) && <span className={classes.few}>few windows</span>}
        </>
      ),
      sortValue: ({ percent }) => percent ?? undefined,
    },
    ...counts,
  ]
}

/** Each count in a column of its own. */
const countColumns: readonly DataColumn<Group>[] = [
  {
    key: 'windowsDue',
    header: 'Windows due',
    align: 'right',
    cell: ({ windowsDue }) => windowsDue,
    sortValue: ({ windowsDue }) => windowsDue,
  },
  ...resultSeries.map(({ key, words }): DataColumn<Group> => ({
    key,
    header: words,
    align: 'right',
    cell: (group) => group[key],
    sortValue: (group) => group[key],
  })),
  { key: 'early', header: 'Early', align: 'right', cell: ({ early }) => early, sortValue: ({ early }) => early },
]

/** The counts as one line, without those that are none. */
const windowsInWords: DataColumn<Group> = {
  key: 'windows',
  header: 'Windows',
  cell: (group) =>
    [
      `${group.windowsDue} due`,
      ...resultSeries.flatMap(({ key, words }) => (group[key] === 0 ? [] : `${words.toLowerCase()} ${group[key]}`)),
    ].join(', '),
}
