import { takeOverPositions, type ChartTakeoverPosition, type MakerChart } from '@shaftbook/contract/maker-charts'
import { Button } from '@mantine/core'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useUnits } from '../../lib/units.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { setupQueries } from './setup-queries.ts'
import classes from './setup.module.css'

/** The positions that still go by the edition before, with what changes for each, and the one act that moves them all. */
export function ChartTakeover({ chart }: { chart: MakerChart }) {
  const { code, may } = useSite()
  const { lengthRange } = useUnits()
  const takeover = useQuery(setupQueries.takeover(code, chart.id))
  if (takeover.isPending) return null
  if (takeover.isError)
    return <ErrorState problem={shownProblem(takeover.error)} onRetry={() => void takeover.refetch()} />
  const { from, positions } = takeover.data
  if (positions.length === 0) return null
  const changing = positions.filter(({ changes }) => changes).length
  const count = positions.length === 1 ? '1 position' : `${positions.length} positions`
  return (
    <PagePart title={`Still on edition ${from.edition}`}>
      <p className={classes.sentence}>
        {positions.length === 1 ? `${count} goes` : `${count} go`} by the edition before.{' '}
        {changing === 0 ? 'No band changes with this one.' : `The limits change at ${changing} of them.`} Mount records
        stay as they are.
      </p>
      {may(takeOverPositions) && <MoveAct chart={chart} positionCount={positions.length} />}
      <DataTable
        caption={`Positions that go by edition ${from.edition}`}
        columns={takeoverColumns(lengthRange)}
        rows={positions.toSorted((a, b) => Number(b.changes) - Number(a.changes))}
        rowKey={({ id }) => id}
        rowHref={({ id }) => paths.position(code, id)}
        empty={null}
      />
    </PagePart>
  )
}

function MoveAct({ chart, positionCount }: { chart: MakerChart; positionCount: number }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [asked, setAsked] = useState(false)
  const count = positionCount === 1 ? 'the position' : `all ${positionCount} positions`
  const moving = useMutation({
    mutationFn: () =>
      call(takeOverPositions, {
        params: { site: code, id: chart.id },
        version: chart.version,
        body: { positionCount },
      }),
    onSuccess: () => notice.done(`From now on edition ${chart.edition} holds. Mount records stay as they are.`),
    onError: (error) => notice.failed(error.message),
    onSettled: () => invalidateSite(client, code),
  })
  return (
    <div className={classes.sentence}>
      <Button loading={moving.isPending} onClick={() => setAsked(true)}>
        Move {count} to this edition
      </Button>
      <Confirm
        opened={asked}
        title={`Move ${count} to edition ${chart.edition}?`}
        confirmLabel="Move them"
        onCancel={() => setAsked(false)}
        onConfirm={() => {
          setAsked(false)
          moving.mutate()
        }}
      >
        The next mount there is judged by this edition. Signed records keep the band that they were judged by.
      </Confirm>
    </div>
  )
}

type LengthRange = ReturnType<typeof useUnits>['lengthRange']

function takeoverColumns(lengthRange: LengthRange): DataColumn<ChartTakeoverPosition>[] {
  const band = (shown: ChartTakeoverPosition['before']) => {
    if (!shown) return 'none'
    const { kind } = shown.source
    const other = kind === 'position' ? ' (its own)' : kind === 'generic-guide' ? ' (generic guide)' : ''
    return `${lengthRange(shown.minUm, shown.maxUm)}${other}`
  }
  return [
    { key: 'tag', header: 'Position', cell: ({ tag }) => tag, phone: 'title' },
    { key: 'bearing', header: 'Bearing', cell: ({ designation }) => designation },
    { key: 'before', header: 'Band now', cell: ({ before }) => band(before) },
    { key: 'after', header: 'Band by this edition', cell: ({ after }) => band(after) },
    {
      key: 'changes',
      header: 'Limits',
      cell: ({ changes }) => (changes ? <strong>change</strong> : 'stay'),
      phone: 'aside',
    },
  ]
}
