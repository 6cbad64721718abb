import type { Flag } from '@shaftbook/contract/flags'
import { printBlankSheet } from '@shaftbook/contract/papers'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery, useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { addressOf } from '../../api/call.ts'
import { WaitingHere } from '../../features/device/waiting-here.tsx'
import { FlagItem } from '../../features/flags/flag-item.tsx'
import { PutOffDialog } from '../../features/flags/put-off-dialog.tsx'
import { PositionTasks } from '../../features/greasing/position-tasks.tsx'
import { PlannedHere } from '../../features/mount-plans/planned-here.tsx'
import { bandSourceText } from '../../features/mounts/band-source.tsx'
import { UnfinishedSheets } from '../../features/mounts/unfinished-sheets.tsx'
import { AddPhotos } from '../../features/photos/add-photos.tsx'
import { PhotoStrip } from '../../features/photos/photo-strip.tsx'
import { FittedNow } from '../../features/positions/fitted-now.tsx'
import { hoursSoFar } from '../../features/positions/hours-so-far.ts'
import { lifeFitments } from '../../features/positions/life-fitments.ts'
import { NextBand } from '../../features/positions/next-band.tsx'
import { PositionActions } from '../../features/positions/position-actions.tsx'
import classes from '../../features/positions/position-page.module.css'
import { positionQueries } from '../../features/positions/position-queries.ts'
import { SeatFacts } from '../../features/positions/seat-facts.tsx'
import { RemovalTable } from '../../features/removals/removal-table.tsx'
import { KitLines } from '../../features/stores/kit-lines.tsx'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { FlagList } from '../../ui/flag-row.tsx'
import { LifeStrip } from '../../ui/life-strip.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** Everything that the book knows of one position: its life first. */
export function PositionPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, site } = useSite()
  const { data: place } = useSuspenseQuery(positionQueries.overview(code, id))
  const { data: history } = useSuspenseQuery(positionQueries.history(code, id))
  const mount = useQuery(positionQueries.mount(code, place.fitment?.mountRecordId ?? null))
  const today = useToday(site.timeZone)
  const { position, shaft, machine, area, band, kit } = place
  const hours = hoursOf(place, mount.data?.runHours ?? null)
  return (
    <>
      <PageHead
        title={position.tag}
        sentence={`${position.name}, ${shaft.name.toLowerCase()} of ${machine.name} ${machine.tag}, ${area.name}.`}
        trail={[
          { label: area.name, href: paths.areaPositions(code, area.code) },
          { label: `${machine.tag} ${machine.name}`, href: paths.machinePositions(code, machine.id) },
        ]}
        actions={<PositionActions place={place} />}
      />
      <WaitingHere positionId={id} />
      <UnfinishedSheets positionId={id} />
      {position.retiredAt && (
        <p className={classes.soft}>This position is retired: it keeps its history and takes no more bearings.</p>
      )}
      <div className={classes.life}>
        <LifeStrip fitments={lifeFitments(history, hours)} today={today} tag={position.tag} timeZone={site.timeZone} />
        {history.olderGreasingsLeftOut && (
          <p className={classes.soft}>The newest 1 000 greasings are drawn; older ones are in the greasing log.</p>
        )}
      </div>
      <PositionFlags flags={place.flags} />
      <PlannedHere positionId={id} />
      <div className={classes.columns}>
        <div>
          <PagePart title="Fitted now">
            <FittedNow place={place} hours={hours} judgement={mount.data?.judgement ?? null} />
          </PagePart>
          <PagePart title="Greasing" aside={<AppLink href={paths.greasePlans(code, id)}>Plans</AppLink>}>
            <PositionTasks
              place={place}
              lastGreasedAt={newestOf(history.greasings.map(({ greasedAt }) => greasedAt))}
            />
          </PagePart>
        </div>
        <div>
          <PagePart
            title="Band for the next mount"
            aside={
              <a href={addressOf(printBlankSheet, { params: { site: code, id } })} target="_blank" rel="noopener">
                Blank sheet (PDF)
              </a>
            }
          >
            <NextBand place={place} sourceText={band && bandSourceText(band.source)} />
          </PagePart>
          <PagePart title="Seat and shaft" aside={<AppLink href={paths.labels(code, id)}>Label</AppLink>}>
            <SeatFacts place={place} />
          </PagePart>
        </div>
      </div>
      <PagePart title="Kit" aside={kit && <AppLink href={paths.pickList(code, id)}>Pick list</AppLink>}>
        {kit ? (
          <KitLines lines={kit.lines} caption={`Kit of ${position.tag}`} />
        ) : (
          <p className={classes.soft}>
            No kit is named for this position: an engineer chooses it when editing the position.
          </p>
        )}
      </PagePart>
      <PagePart title="Photos" aside={<AddPhotos positionId={id} tag={position.tag} />}>
        <PhotoStrip
          where={{ positionId: id }}
          label={`Photos at ${position.tag}`}
          empty="No photos yet: they are taken here, on the mount sheet, and when a bearing is taken out."
        />
      </PagePart>
      <PagePart title="Bearings that left">
        <RemovalTable positionId={id} tag={position.tag} fitments={history.fitments} />
      </PagePart>
    </>
  )
}

function PositionFlags({ flags }: { flags: readonly Flag[] }) {
  const [puttingOff, setPuttingOff] = useState<Flag | null>(null)
  return (
    <PagePart title="Flags">
      {flags.length === 0 ? (
        <p className={classes.good}>No open flag here.</p>
      ) : (
        <div className={classes.flags}>
          <FlagList label="Flags of this position">
            {flags.map((flag) => (
              <FlagItem key={flag.id} flag={flag} onPutOff={setPuttingOff} />
            ))}
          </FlagList>
        </div>
      )}
      {puttingOff && <PutOffDialog flag={puttingOff} onClose={() => setPuttingOff(null)} />}
    </PagePart>
  )
}

function hoursOf({ fitment, meter, machine }: PositionOverview, startTotalHours: number | null) {
  if (!fitment) return null
  const { fittedAt, entryAgeHours } = fitment
  return hoursSoFar({ fittedAt, entryAgeHours, startTotalHours, meter, hoursPerDay: machine.hoursPerDay }, new Date())
}

function newestOf(instants: readonly string[]): string | null {
  return instants.reduce<string | null>((newest, at) => (newest === null || at > newest ? at : newest), null)
}
