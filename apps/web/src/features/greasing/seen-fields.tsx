import { Button, NativeSelect } from '@mantine/core'
import { useId, useState } from 'react'
import { NumberField } from '../../ui/number-field.tsx'
import { zoneWords, type SeenEntry, type SeenFaults } from './seen-entry.ts'
import classes from './greasing-dialog.module.css'

interface SeenFieldsProps {
  entry: SeenEntry
  faults: SeenFaults
  onChange: (part: Partial<SeenEntry>) => void
}

/** Temperature and vibration, where somebody took them at the work. */
export function SeenFields({ entry, faults, onChange }: SeenFieldsProps) {
  const filled = Object.values(entry).some((text) => text !== '')
  const [open, setOpen] = useState(filled)
  const partId = useId()
  return (
    <div>
      <Button
        variant="subtle"
        aria-expanded={open}
        aria-controls={partId}
        disabled={filled}
        onClick={() => setOpen(!open)}
      >
        Temperature and vibration, if read
      </Button>
      <div id={partId} hidden={!open} className={open ? classes.pair : undefined}>
        <NumberField
          size="touch"
          label="Temperature of the housing"
          unit="°C"
          text={entry.temperatureC}
          onText={(temperatureC) => onChange({ temperatureC })}
          error={faults.temperatureC}
        />
        <NumberField
          size="touch"
          label="Vibration, r.m.s."
          unit="mm/s"
          text={entry.vibrationMmS}
          onText={(vibrationMmS) => onChange({ vibrationMmS })}
          error={faults.vibrationMmS}
        />
        <NativeSelect
          size="touch"
          label="Zone of vibration (ISO 20816)"
          description="As the table for this machine says"
          data={Object.entries(zoneWords).map(([value, label]) => ({ value, label }))}
          value={entry.zone}
          onChange={(event) => onChange({ zone: event.currentTarget.value as SeenEntry['zone'] })}
        />
      </div>
    </div>
  )
}
