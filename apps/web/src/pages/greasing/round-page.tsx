import { Button } from '@mantine/core'
import { startRoundWalk, type RoundWalkSummary } from '@shaftbook/contract/round-walks'
import { changeRound } from '@shaftbook/contract/rounds'
import { useQuery, useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { walkColumns } from '../../features/rounds/round-columns.tsx'
import { roundQueries } from '../../features/rounds/round-queries.ts'
import { RoundSheet } from '../../features/rounds/round-sheet.tsx'
import { stopsText } from '../../features/rounds/round-words.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import classes from './round-page.module.css'

/** One round: its stops, to be walked or printed, and how it was walked. */
export function RoundPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, site, may } = useSite()
  const { data: round } = useSuspenseQuery(roundQueries.round(code, id))
  const { data: guns } = useSuspenseQuery(roundQueries.guns(code))
  const { data: greases } = useSuspenseQuery(roundQueries.greases(code))
  const walks = useQuery(roundQueries.walks(code, id))
  return (
    <>
      <PageHead
        title={round.name}
        sentence={`${stopsText(round.stops.length)} in walking order.${round.note ? ` ${round.note}` : ''}`}
        trail={[
          { label: 'Greasing', href: paths.greasing(code) },
          { label: 'Rounds', href: paths.rounds(code) },
        ]}
        actions={
          <>
            <Button variant="default" onClick={() => globalThis.print()}>
              Print
            </Button>
            {may(changeRound) && (
              <Button component={AppLink} variant="default" href={paths.changeRound(code, id)}>
                Change
              </Button>
            )}
            {may(startRoundWalk) && (
              <Button component={AppLink} href={paths.walkRound(code, id)}>
                Walk the round
              </Button>
            )}
          </>
        }
      />
      <RoundSheet round={round} guns={guns.items} greases={greases.items} />
      {walks.isSuccess && (
        <div className={classes.walks}>
          <PagePart title="Walked">
            <DataTable<RoundWalkSummary>
              caption="Walks, the latest first"
              columns={walkColumns(site.timeZone)}
              rows={walks.data.items}
              rowKey={(walk) => walk.id}
              rowHref={(walk) => paths.roundWalk(code, walk.id)}
              empty="Nobody has walked this round yet."
            />
          </PagePart>
        </div>
      )}
    </>
  )
}
