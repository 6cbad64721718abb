import { chooseBand, residualMinimum } from '@shaftbook/bearing/band'
import { clearanceRange } from '@shaftbook/bearing/clearance'
import { stacksOf } from '@shaftbook/bearing/feeler-blades'
import { SiteSettings } from '@shaftbook/contract/access'
import type { BandBearing } from '@shaftbook/contract/band-of-position'
import { useState } from 'react'
import type { PlaceLimits } from '../features/mounts/band-of-place.ts'
import { DriveUpGuide } from '../features/mounts/drive-up-guide.tsx'
import { driveUpState } from '../features/mounts/drive-up-state.ts'
import { driveUpSaying } from '../features/mounts/drive-up-words.ts'
import { emptyPair, type ReadingPair, type TypedStep } from '../features/mounts/sheet.ts'
import { useUnits } from '../lib/units.tsx'
import { ClearanceGauge } from '../ui/clearance-gauge.tsx'
import { GallerySection } from './gallery-section.tsx'
import classes from './gallery.module.css'

const type: BandBearing = {
  kind: 'spherical-roller',
  series: '222',
  boreMm: 100,
  taper: '1:12',
  clearanceClass: 'C3',
}
const settings = SiteSettings.parse({})
const bladesUm = [30, 40, 50, 60, 70, 80, 90, 100, 150, 200]

function limitsOf(own: { minUm: number; maxUm: number } | null, noBand = false): PlaceLimits {
  const query = { ...type, series: null, ownBand: own, ownResidualMinUm: own ? 40 : null }
  const [band, minimum] = [chooseBand(query), residualMinimum(query)]
  const range = clearanceRange(100, 'tapered', 'C3')
  return {
    band: band.found && !noBand ? band : null,
    noBand: noBand ? 'No source has a band for this bore.' : null,
    residualMinimum: minimum.found ? minimum : null,
    judged: true,
    classUm: range.found ? range.range : null,
  }
}

function pair(a: string, b: string): ReadingPair {
  return { A: { text: a, meant: false }, B: { text: b, meant: false } }
}

function step(a: string, b: string, driveUpMm = '', struck = false): TypedStep {
  return { pair: pair(a, b), driveUpMm, nutAngleDeg: '', struck }
}

const guide = limitsOf(null)
const wide = limitsOf({ minUm: 40, maxUm: 75 })
const start = [step('0.115', '0.118', '0.30'), step('0.99', '0,10', '', true), step('0.099', '0.103', '0.52')]

const states: { name: string; bench: ReadingPair[]; steps: TypedStep[]; limits?: PlaceLimits }[] = [
  { name: 'before the first step', bench: [pair('0.125', '0.128')], steps: [] },
  { name: 'on the way', bench: [pair('0.125', '0.128')], steps: start },
  { name: 'nearly there', bench: [pair('0.125', '0.128')], steps: [...start, step('0.086', '0.089')] },
  {
    name: 'inside',
    bench: [pair('0.135', '0.138')],
    steps: [step('0.112', '0.11'), step('0.08', '0.083')],
    limits: wide,
  },
  { name: 'inside, residual not proven', bench: [pair('0.112', '0.114')], steps: [step('0.06', '0.062')] },
  { name: 'too far', bench: [pair('0.135', '0.138')], steps: [...start, step('0.07', '0.072')] },
  { name: 'read again', bench: [pair('0.125', '0.128')], steps: [step('0.09', '0.088'), step('0.11', '0.112')] },
  { name: 'no room', bench: [pair('0.09', '0.092')], steps: [] },
  { name: 'one row', bench: [pair('0.125', '0.128')], steps: [...start, step('0.08', '')] },
  { name: 'an unlikely reading', bench: [pair('0.125', '0.128')], steps: [...start, step('0.8', '0.08')] },
  { name: 'no band', bench: [pair('0.125', '0.128')], steps: [], limits: limitsOf(null, true) },
]

export function GalleryDriveUp() {
  const { unit } = useUnits()
  const stacks = stacksOf(bladesUm)
  return (
    <>
      <GallerySection title="Drive-up guide">
        <h3>22220 K/C3 on its sleeve</h3>
        <Guided />
      </GallerySection>
      <GallerySection title="Clearance gauge, in the hand">
        <div className={classes.grid}>
          {states.map(({ name, bench, steps, limits = guide }) => {
            const typed = { bench, steps, unit: 'mm', sayIn: unit } as const
            const seat = { byFeel: false, travelTrusted: true, pitchMm: 2, typing: null }
            const state = driveUpState({ ...typed, ...seat, type, limits, settings, stacks })
            const says = driveUpSaying(state, unit)
            return <ClearanceGauge key={name} {...state.gauge} size="hand" says={says} classLabel="C3" />
          })}
        </div>
      </GallerySection>
    </>
  )
}

function Guided() {
  const [steps, setSteps] = useState<TypedStep[]>([...start, { ...step('', ''), pair: emptyPair() }])
  return (
    <DriveUpGuide
      bench={states[0]?.bench ?? []}
      steps={steps}
      unit="mm"
      type={type}
      limits={guide}
      settings={settings}
      travelTrusted
      pitchMm={2}
      bladesUm={bladesUm}
      onSteps={setSteps}
    />
  )
}
