import { Button } from '@mantine/core'
import { revokeCalendarFeed, type CalendarFeed } from '@shaftbook/contract/greasing-mail'
import { useInfiniteQuery, useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { mailQueries } from './mail-queries.ts'

/** The calendar links of the person who is signed in; each can be ended. */
export function CalendarLinks() {
  const { code, site } = useSite()
  const [ending, setEnding] = useState<CalendarFeed | null>(null)
  const feeds = useInfiniteQuery(mailQueries.feeds(code))
  const { rows, more } = listed(feeds)
  if (feeds.isPending) return <LoadingRows what="your links" rows={2} />
  if (feeds.isError)
    return <ErrorState heading="h3" problem={shownProblem(feeds.error)} onRetry={() => void feeds.refetch()} />
  return (
    <>
      <DataTable<CalendarFeed>
        caption="Your calendar links, oldest first"
        columns={linkColumns(site.timeZone, setEnding)}
        rows={rows}
        rowKey={({ id }) => id}
        more={more}
        empty={<EmptyState heading="h3" title="You have no calendar link yet" text="Make one above." />}
      />
      <EndLink feed={ending} onClose={() => setEnding(null)} />
    </>
  )
}

/** What a link is about: "Receiving", "Round: North side" or the whole site. */
function subjectWords({ areaName, roundName }: CalendarFeed): string {
  return areaName ?? (roundName === null ? 'The whole site' : `Round: ${roundName}`)
}

function linkColumns(timeZone: string, onEnd: (feed: CalendarFeed) => void): DataColumn<CalendarFeed>[] {
  return [
    { key: 'subject', header: 'What is due in', phone: 'title', cell: subjectWords },
    {
      key: 'made',
      header: 'Made',
      cell: ({ createdAt }) => <Timestamp at={createdAt} timeZone={timeZone} />,
    },
    {
      key: 'end',
      header: 'End',
      phone: 'aside',
      cell: (feed) => (
        <Button
          variant="default"
          size="compact-sm"
          onClick={() => onEnd(feed)}
          aria-label={`End the link to ${subjectWords(feed)}`}
        >
          End
        </Button>
      ),
    },
  ]
}

function EndLink({ feed, onClose }: { feed: CalendarFeed | null; onClose: () => void }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const end = useMutation({
    mutationFn: (id: string) => call(revokeCalendarFeed, { params: { site: code, id } }),
    onSuccess: () => notice.done('The link is ended.'),
    onError: (error) => notice.failed(shownProblem(error).detail),
    onSettled: async () => {
      await invalidateSite(client, code)
      onClose()
    },
  })
  return (
    <Confirm
      opened={feed !== null}
      title="End this link?"
      confirmLabel="End the link"
      tone="grave"
      busy={end.isPending}
      onConfirm={() => feed && end.mutate(feed.id)}
      onCancel={onClose}
    >
      Every calendar that reads it gets nothing more from now on. It cannot be brought back; a new one can be made.
    </Confirm>
  )
}
