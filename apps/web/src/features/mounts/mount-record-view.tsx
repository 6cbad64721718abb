import type { MountRecord } from '@shaftbook/contract/mounts'
import type { ReactNode } from 'react'
import { clearanceRange } from '@shaftbook/bearing/clearance'
import { useUnits } from '../../lib/units.tsx'
import { ClearanceGauge } from '../../ui/clearance-gauge.tsx'
import type { GaugeInput } from '../../ui/clearance-gauge-geometry.ts'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { BandSource } from './band-source.tsx'
import { MountChecks } from './mount-checks.tsx'
import { MountParts, MountPeople, MountWork } from './mount-facts.tsx'
import { MountReadings } from './mount-readings.tsx'
import { RecordWork } from './record-work.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { verdictSentence } from './verdict-sentence.ts'
import classes from './mount-record.module.css'

/** A mount record as it stands in the book. */
export function MountRecordView({ record, besideVerdict }: { record: MountRecord; besideVerdict?: ReactNode }) {
  const { judgement } = record
  return (
    <div className={classes.sheet}>
      <RecordVerdict record={record} />
      {besideVerdict}
      <div className={classes.columns}>
        <div className={classes.main}>
          <PagePart title="Readings">
            <MountReadings record={record} />
          </PagePart>
          <PagePart title="Checks">
            <MountChecks checks={judgement.checks} />
            {judgement.cautions.length > 0 && (
              <ul className={classes.cautions} aria-label="What to look at">
                {judgement.cautions.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            )}
            <p className={classes.soft}>Judged by the formulas {judgement.formulaVersion}.</p>
          </PagePart>
        </div>
        <div className={classes.side}>
          {record.readings.some(({ moment }) => moment === 'bench' || moment === 'mounted') && (
            <PagePart title="Gauge">
              <RecordGauge record={record} />
            </PagePart>
          )}
          {record.outOfBandReason && (
            <PagePart title="Why it stayed as it is">
              <p>{record.outOfBandReason}</p>
            </PagePart>
          )}
          {record.note && (
            <PagePart title="Note">
              <p>{record.note}</p>
            </PagePart>
          )}
        </div>
      </div>
      <RecordWork record={record} />
      <div className={classes.facts}>
        <PagePart title="People and times">
          <MountPeople record={record} />
        </PagePart>
        <PagePart title="Work">
          <MountWork record={record} />
        </PagePart>
        <PagePart title="Parts and grease">
          <MountParts record={record} />
        </PagePart>
      </div>
    </div>
  )
}

function RecordVerdict({ record }: { record: MountRecord }) {
  const { length, unit } = useUnits()
  const { verdict, residual, band, expandedUncertaintyUm, residualMinUm } = record.judgement
  const sentence = verdictSentence(record.judgement, unit)
  return (
    <section className={classes.verdict} aria-label="Verdict">
      {verdict ? <VerdictMark verdict={verdict} size="l" /> : <p className={classes.notJudged}>Not judged</p>}
      {sentence && <p>{sentence}</p>}
      {residual && residual !== 'no-minimum' && (
        <p className={classes.residual}>
          <VerdictMark verdict={residual} about="Residual" size={residual === 'enough' ? 's' : 'l'} />
          {residualMinUm !== null && <span className={classes.soft}>at least {length(residualMinUm)} is wanted</span>}
        </p>
      )}
      {expandedUncertaintyUm !== null && (
        <p className={classes.soft}>Expanded uncertainty of the reduction: ± {length(expandedUncertaintyUm)}.</p>
      )}
      {band ? <BandSource source={band.source} /> : <p className={classes.soft}>No band applies to this mount.</p>}
    </section>
  )
}

/** The gauge as it stood when the record was kept. */
function RecordGauge({ record }: { record: MountRecord }) {
  const { judgement, bearing, clearanceClass, readings } = record
  const range =
    clearanceClass === null
      ? null
      : clearanceRange(bearing.boreMm, bearing.taper === null ? 'cylindrical' : 'tapered', clearanceClass)
  const input: GaugeInput = {
    benchUm: judgement.benchMeanUm,
    bandUm: judgement.band && { minUm: judgement.band.minUm, maxUm: judgement.band.maxUm },
    classUm: range?.found ? range.range : null,
    residualMinUm: judgement.residualMinUm,
    readings: readings
      .filter(({ moment, struck }) => moment === 'mounted' && !struck)
      .map(({ row, clearanceUm }) => ({ row, um: clearanceUm })),
    meanUm: judgement.mountedMeanUm,
  }
  return (
    <ClearanceGauge
      past
      {...input}
      classLabel={clearanceClass ?? undefined}
      bandSource={judgement.band?.source.title}
    />
  )
}
