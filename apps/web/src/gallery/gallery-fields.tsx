import { Button } from '@mantine/core'
import { useState } from 'react'
import { useUnits } from '../lib/units.tsx'
import { MeasureField } from '../ui/measure-field.tsx'
import { noMeasure, readMeasure, type MeasureText } from '../ui/measure-text.ts'
import { ModeTree } from '../ui/mode-tree.tsx'
import { NumberField } from '../ui/number-field.tsx'
import { GallerySection } from './gallery-section.tsx'
import classes from './gallery.module.css'

const modes = [
  { clause: '5.2', term: 'Wear', parent: null, signs: '' },
  {
    clause: '5.2.2',
    term: 'Abrasive wear',
    parent: '5.2',
    signs: 'Dull grey raceways, worn cage pockets, dark gritty grease',
  },
  { clause: '5.2.3', term: 'Adhesive wear', parent: '5.2', signs: 'Smeared, heat-tinted patches on rollers' },
  { clause: '5.3', term: 'Corrosion', parent: null, signs: '' },
  { clause: '5.3.2', term: 'Moisture corrosion', parent: '5.3', signs: 'Red-brown or black spots, rusty grease' },
  { clause: '5.3.3', term: 'Frictional corrosion', parent: '5.3', signs: '' },
  { clause: '5.3.3.2', term: 'Fretting corrosion', parent: '5.3.3', signs: 'Red-brown powder in the bore' },
]

export function GalleryFields() {
  const { unit, length } = useUnits()
  const [bench, setBench] = useState<MeasureText>({ text: '1,3', unit: 'mm' })
  const [row, setRow] = useState<MeasureText>(noMeasure)
  const [bad, setBad] = useState<MeasureText>({ text: '0,1,2', unit: 'mm' })
  const [dose, setDose] = useState('41.4')
  const [mode, setMode] = useState<string | null>('5.3.3.2')
  const read = readMeasure(bench, unit)
  return (
    <>
      <GallerySection title="Fields">
        <div className={classes.fields}>
          <MeasureField
            label="Bench clearance, row A"
            size="touch"
            value={bench}
            onChange={setBench}
            ask={
              read.kind === 'length' && read.um > 1000
                ? `That is ${length(read.um)}. Was 0,13 mm meant, or thou?`
                : null
            }
          />
          <MeasureField label="Row B" size="touch" value={row} onChange={setRow} placeholder="0.000" />
          <MeasureField
            label="After, row A"
            description="Largest blade that passes with light drag"
            value={bad}
            onChange={setBad}
            error={'"0,1,2" is not one number. Type it again, such as 0,12.'}
          />
          <NumberField label="Dose" unit="g" text={dose} onText={setDose} />
        </div>
        <div className={classes.acts} style={{ marginTop: 24 }}>
          <Button size="touch">Sign</Button>
          <Button size="touch" variant="default">
            Back
          </Button>
          <Button>Log greasing</Button>
          <Button variant="default">Put off</Button>
          <Button variant="subtle">Show all</Button>
          <Button variant="outline">Correct</Button>
          <Button color="over">Refuse</Button>
          <Button disabled>Sign</Button>
          <Button loading>Signing</Button>
        </div>
      </GallerySection>
      <GallerySection title="Failure mode">
        <ModeTree legend="How did it fail?" nodes={modes} value={mode} onChange={setMode} />
      </GallerySection>
    </>
  )
}
