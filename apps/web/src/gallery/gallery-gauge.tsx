import { ClearanceGauge } from '../ui/clearance-gauge.tsx'
import type { GaugeInput, GaugeReading } from '../ui/clearance-gauge-geometry.ts'
import { VerdictMark } from '../ui/verdict-mark.tsx'
import { GallerySection } from './gallery-section.tsx'
import classes from './gallery.module.css'

const base: GaugeInput = {
  benchUm: 150,
  bandUm: { minUm: 45, maxUm: 60 },
  classUm: { minUm: 135, maxUm: 170 },
  residualMinUm: 80,
  readings: [],
  meanUm: null,
}

function pairs(...values: [number, number][]): GaugeReading[] {
  return values.flatMap(([a, b]) => [
    { um: a, row: 'A' as const },
    { um: b, row: 'B' as const },
  ])
}

const states: { name: string; input: GaugeInput }[] = [
  { name: 'no readings', input: base },
  { name: 'on the way', input: { ...base, readings: pairs([140, 145], [125, 130], [115, 119]), meanUm: 117 } },
  { name: 'outlier', input: { ...base, readings: [...pairs([140, 145]), { um: 1300, row: 'A' }], meanUm: 430 } },
  { name: 'too far', input: { ...base, readings: pairs([130, 135], [100, 104], [74, 78]), meanUm: 76 } },
  {
    name: 'small bearing',
    input: {
      benchUm: 38,
      bandUm: { minUm: 15, maxUm: 20 },
      classUm: { minUm: 30, maxUm: 40 },
      residualMinUm: 15,
      readings: [{ um: 22, row: 'A' }],
      meanUm: 22,
    },
  },
  {
    name: 'large bearing, many readings',
    input: {
      benchUm: 690,
      bandUm: { minUm: 210, maxUm: 280 },
      classUm: { minUm: 600, maxUm: 750 },
      residualMinUm: 290,
      readings: pairs(...Array.from({ length: 14 }, (_, i): [number, number] => [680 - i * 13, 686 - i * 14])),
      meanUm: 505,
    },
  },
  { name: 'nothing known', input: { ...base, benchUm: null, bandUm: null, classUm: null, residualMinUm: null } },
]

export function GalleryGauge() {
  return (
    <>
      <GallerySection title="Verdict marks">
        <div className={classes.marks}>
          {(['inside', 'under', 'over', 'not-proven'] as const).map((verdict) => (
            <VerdictMark key={verdict} verdict={verdict} size="l" />
          ))}
        </div>
        <div className={classes.marks}>
          {(['inside', 'under', 'over', 'not-proven'] as const).map((verdict) => (
            <VerdictMark key={verdict} verdict={verdict} />
          ))}
          {(['enough', 'too-small', 'not-proven'] as const).map((verdict) => (
            <VerdictMark key={verdict} verdict={verdict} about="Residual" size="s" />
          ))}
        </div>
      </GallerySection>
      <GallerySection title="Clearance gauge, as a panel">
        <ClearanceGauge
          {...base}
          readings={pairs([140, 145], [125, 130], [108, 112], [96, 100])}
          meanUm={98}
          size="panel"
          classLabel="C3"
          bandSource="chart Fans 2024 of this site"
        >
          <VerdictMark verdict="inside" />
        </ClearanceGauge>
      </GallerySection>
      <GallerySection title="Clearance gauge, on a phone">
        <div className={classes.grid}>
          {states.map(({ name, input }) => (
            <ClearanceGauge
              key={name}
              {...input}
              classLabel={input.classUm ? 'C3' : undefined}
              bandSource="generic guide"
            />
          ))}
        </div>
      </GallerySection>
    </>
  )
}
