import { guns as gunTable, type Gun } from '@shaftbook/contract/guns'
import { useSuspenseQuery } from '@tanstack/react-query'
import { GunForm } from '../../features/rounds/gun-form.tsx'
import { roundQueries } from '../../features/rounds/round-queries.ts'
import type { SiteGrease } from '../../features/rounds/gun-choices.ts'
import classes from '../../features/rounds/rounds.module.css'
import { formatDay } from '../../lib/format-day.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { GreaseMark, greasePlaces } from '../../ui/grease-mark.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** The grease guns: what a stroke of each gives, and what is in it. */
export function GunsPage() {
  const { code, may } = useSite()
  const notice = useNotice()
  const { data: guns } = useSuspenseQuery(roundQueries.guns(code))
  const { data: greases } = useSuspenseQuery(roundQueries.greases(code))
  const mayChange = may(gunTable.change)
  return (
    <>
      <PageHead
        title="Grease guns"
        sentence="Doses on a round are counted in strokes of a gun that was weighed; the grease in it is held against the plan."
        trail={[
          { label: 'Greasing', href: paths.greasing(code) },
          { label: 'Rounds', href: paths.rounds(code) },
        ]}
      />
      {guns.items.length === 0 ? (
        <EmptyState title="No gun is entered yet" text="Weigh ten strokes of each gun and enter it here." />
      ) : (
        <ul className={classes.guns} aria-label="Grease guns">
          {guns.items.map((gun) => (
            <li key={`${gun.id} ${gun.version}`}>
              <GunLine gun={gun} greases={greases.items} />
              {mayChange && (
                <details>
                  <summary>Weigh or load {gun.name} anew</summary>
                  <GunForm gun={gun} greases={greases.items} onSaved={() => notice.done(`${gun.name} is changed.`)} />
                </details>
              )}
            </li>
          ))}
        </ul>
      )}
      {mayChange && (
        <PagePart title="Enter a gun">
          <GunForm key={guns.items.length} greases={greases.items} onSaved={() => notice.done('The gun is entered.')} />
        </PagePart>
      )}
    </>
  )
}

function GunLine({ gun, greases }: { gun: Gun; greases: readonly SiteGrease[] }) {
  const grease = greases.find(({ id }) => id === gun.greaseId)
  return (
    <div className={classes.gunLine}>
      <strong>{gun.name}</strong>
      <span>{gun.gramsPerStroke} g a stroke</span>
      {grease ? (
        <GreaseMark name={grease.name} place={greasePlaces(greases).get(grease.id) ?? 0} />
      ) : (
        <span>nobody has said what is in it</span>
      )}
      <span className={classes.soft}>
        {gun.calibratedOn ? `weighed ${formatDay(gun.calibratedOn)}` : 'never weighed'}
        {gun.strokesWeighed && ` over ${gun.strokesWeighed} strokes`}
      </span>
      {gun.note && <span className={classes.soft}>{gun.note}</span>}
    </div>
  )
}
