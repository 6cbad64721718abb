import { Button, Checkbox } from '@mantine/core'
import { areas } from '@shaftbook/contract/register-tables'
import { queryOptions, useMutation, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { areaPart, chooseAreas, keptAreas, refreshKept, sitePart } from '../../offline/keeping.ts'
import { keptParts } from '../../offline/kept-replies.ts'
import { useDeviceBook } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { sizeText } from './device-words.ts'
import classes from './device.module.css'

const areasQuery = (site: string) =>
  queryOptions({
    queryKey: ['device', site, 'areas'],
    queryFn: ({ signal }) => call(areas.list, { params: { site }, query: { limit: 200 } }, signal),
  })

/** Which areas can be read without a network, since when, and how large they are. */
export function KeptAreas() {
  const { me, site, code } = useSite()
  const all = useQuery(areasQuery(code))
  const kept = useDeviceBook(
    async () => ({ chosen: await keptAreas(me.id, code), parts: await keptParts() }),
    `kept/${me.id}/${code}`,
  )
  // what was ticked shows at once, while it is still being fetched
  const [ticked, setTicked] = useState<string[] | null>(null)
  const choose = useMutation({
    mutationFn: (areaIds: string[]) => chooseAreas(me.id, code, areaIds),
    onSettled: () => setTicked(null),
  })
  const refresh = useMutation({ mutationFn: () => refreshKept(code, { now: true, planned: true }) })
  const failed = choose.error ?? refresh.error
  const chosen = ticked ?? kept?.chosen ?? []
  const toggle = (areaId: string): void => {
    const next = chosen.includes(areaId) ? chosen.filter((id) => id !== areaId) : [...chosen, areaId]
    setTicked(next)
    choose.mutate(next)
  }
  const shared = kept?.parts.get(sitePart(code))

  return (
    <PagePart
      title="Kept here to read without a network"
      aside={
        <Button variant="default" size="compact-sm" loading={refresh.isPending} onClick={() => refresh.mutate()}>
          Refresh now
        </Button>
      }
    >
      <p className={classes.explained}>
        Choose the areas that you work in. Their positions, kits, bands, flags and due greasings are then here also
        where there is no signal; planned mounts are kept by themselves. All of it is erased when you sign out.
      </p>
      {all.isPending && <LoadingRows what="the areas" rows={3} />}
      {all.isError && <ErrorState heading="h3" problem={shownProblem(all.error)} onRetry={() => void all.refetch()} />}
      <ul className={classes.areas} aria-label="Areas kept on this device" aria-busy={choose.isPending}>
        {all.data?.items.map((area) => {
          const part = kept?.parts.get(areaPart(code, area.id))
          const loading = choose.isPending && chosen.includes(area.id) && !part
          return (
            <li key={area.id} className={classes.area}>
              <Checkbox
                label={area.name}
                checked={chosen.includes(area.id)}
                disabled={choose.isPending || kept === undefined}
                onChange={() => toggle(area.id)}
              />
              <span className={classes.areaState}>
                {loading && 'is being fetched …'}
                {part && (
                  <>
                    <Timestamp at={new Date(part.atMs).toISOString()} timeZone={site.timeZone} /> ·{' '}
                    {sizeText(part.bytes)}
                  </>
                )}
              </span>
            </li>
          )
        })}
      </ul>
      {shared && (
        <p className={classes.when}>
          Lists of the site and planned mounts:{' '}
          <Timestamp at={new Date(shared.atMs).toISOString()} timeZone={site.timeZone} /> · {sizeText(shared.bytes)}
        </p>
      )}
      {failed && (
        <p className={classes.failed} role="alert">
          {shownProblem(failed).detail}
        </p>
      )}
    </PagePart>
  )
}
