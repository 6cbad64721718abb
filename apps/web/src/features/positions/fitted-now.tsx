import type { Judgement } from '@shaftbook/contract/judgement'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { formatCount } from '../../lib/format-count.ts'
import { useUnits } from '../../lib/units.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { BandRuler } from './band-ruler.tsx'
import type { HoursSoFar } from './hours-so-far.ts'
import classes from './position-page.module.css'

interface FittedNowProps {
  place: PositionOverview
  hours: HoursSoFar | null
  /** What the mount record says; null while it is read or where there is none. */
  judgement: Judgement | null
}

/** The bearing that is in the position, and how its mount finished. */
export function FittedNow({ place, hours, judgement }: FittedNowProps) {
  const { code, site } = useSite()
  const { fitment, fittedType, bearingType } = place
  if (!fitment)
    return <p className={classes.soft}>No bearing is fitted here. The register plans {bearingType.designation}.</p>
  const otherType = fittedType !== null && fittedType.id !== bearingType.id
  const items: Definition[] = [
    {
      label: 'Bearing',
      value: fitment.designation,
      note: [fitment.serial && `no. ${fitment.serial}`, otherType && `the register plans ${bearingType.designation}`]
        .filter(Boolean)
        .join('; '),
    },
    { label: 'Fitted', value: <Timestamp at={fitment.fittedAt} timeZone={site.timeZone} dateOnly /> },
    {
      label: 'Ran so far',
      value: hours && `${formatCount(hours.hours)} h`,
      note: hours && <HoursNote hours={hours} place={place} />,
    },
    { label: 'Reduction', value: <ReductionWords fitment={fitment} judgement={judgement} /> },
    { label: 'Clearance left', value: <ResidualWords fitment={fitment} judgement={judgement} /> },
    {
      label: 'Mount record',
      value: fitment.mountRecordId ? (
        <AppLink href={paths.mount(code, fitment.mountRecordId)}>Open the mount record</AppLink>
      ) : (
        'none: nothing was measured, or nothing was written down'
      ),
    },
  ]
  return <DefinitionList items={items} />
}

function HoursNote({ hours, place }: { hours: HoursSoFar; place: PositionOverview }) {
  const { site } = useSite()
  if (hours.source === 'estimate') return <>estimated from {place.machine.hoursPerDay} h a day</>
  return (
    <>
      by the meter, read <Timestamp at={hours.readAt} timeZone={site.timeZone} dateOnly relative={false} />
    </>
  )
}

interface JudgedProps {
  fitment: NonNullable<PositionOverview['fitment']>
  judgement: Judgement | null
}

function ReductionWords({ fitment, judgement }: JudgedProps) {
  const units = useUnits()
  const { verdict, reductionUm } = fitment
  if (verdict === null) return 'no verdict'
  const band = judgement?.band
  return (
    <>
      <VerdictMark verdict={verdict} />
      {band && reductionUm !== null && (
        <BandRuler minUm={band.minUm} maxUm={band.maxUm} reductionUm={reductionUm} verdict={verdict} />
      )}
      {reductionUm !== null && (
        <span className={classes.soft}>
          {units.length(reductionUm)} taken out{band && `; the band was ${units.lengthRange(band.minUm, band.maxUm)}`}
        </span>
      )}
    </>
  )
}

function ResidualWords({ fitment, judgement }: JudgedProps) {
  const units = useUnits()
  const { residual } = fitment
  const left = judgement?.mountedMeanUm
  const least = judgement?.residualMinUm
  const words = [
    left == null ? '' : `${units.length(left)} left`,
    least == null ? '' : `the least is ${units.length(least)}`,
    residual === 'no-minimum' ? 'no least is set' : '',
  ]
  if (residual === null) return 'no verdict'
  return (
    <>
      {residual !== 'no-minimum' && <VerdictMark verdict={residual} />}{' '}
      <span className={classes.soft}>{words.filter(Boolean).join('; ')}</span>
    </>
  )
}
