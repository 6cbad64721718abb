import { Button } from '@mantine/core'
import { createRound, type RoundSummary } from '@shaftbook/contract/rounds'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useMemo } from 'react'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { roundColumns } from '../../features/rounds/round-columns.tsx'
import { roundQueries } from '../../features/rounds/round-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'

/** The rounds of the site. */
export function RoundsPage() {
  const { code, site, may } = useSite()
  const rounds = useInfiniteQuery(roundQueries.list(code))
  const { rows, more } = listed(rounds)
  const columns = useMemo(() => roundColumns(site.timeZone), [site.timeZone])
  const make = may(createRound) && (
    <Button component={AppLink} href={paths.newRound(code)}>
      Make a round
    </Button>
  )
  return (
    <>
      <PageHead
        title="Rounds"
        sentence="Stops in the order in which they are walked, with what goes in at each."
        trail={[{ label: 'Greasing', href: paths.greasing(code) }]}
        actions={
          <>
            <Button component={AppLink} variant="default" href={paths.guns(code)}>
              Grease guns
            </Button>
            {make}
          </>
        }
      />
      {rounds.isPending && <LoadingRows what="rounds" />}
      {rounds.isError && <ErrorState problem={shownProblem(rounds.error)} onRetry={() => void rounds.refetch()} />}
      {rounds.isSuccess && (
        <DataTable<RoundSummary>
          caption="Rounds by name"
          columns={columns}
          rows={rows}
          rowKey={({ id }) => id}
          rowHref={({ id }) => paths.round(code, id)}
          more={more}
          empty={
            <EmptyState
              title="No round is made yet"
              text="An engineer makes a round from areas, greases and tags, and puts its stops in order."
            />
          }
        />
      )}
    </>
  )
}
