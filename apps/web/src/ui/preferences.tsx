import { SegmentedControl } from '@mantine/core'
import { useId } from 'react'
import { isLengthUnit, lengthUnitKeys, lengthUnits } from '../lib/length-units.ts'
import { useThemeMode, type ThemeMode } from '../lib/theme-mode.ts'
import { useUnits } from '../lib/units.tsx'
import classes from './frame-menu.module.css'

const themeChoices: { value: ThemeMode; label: string }[] = [
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
  { value: 'auto', label: 'As device' },
]

/** Theme and length unit of this person. */
export function Preferences() {
  const { mode, setMode } = useThemeMode()
  const { unit, setUnit } = useUnits()
  const themeLabel = useId()
  const unitLabel = useId()
  return (
    <>
      <div>
        <p id={themeLabel} className={classes.prefLabel}>
          Theme
        </p>
        <SegmentedControl
          fullWidth
          aria-labelledby={themeLabel}
          data={themeChoices}
          value={mode}
          onChange={(value) => setMode(value)}
        />
      </div>
      <div>
        <p id={unitLabel} className={classes.prefLabel}>
          Clearance in
        </p>
        <SegmentedControl
          fullWidth
          aria-labelledby={unitLabel}
          data={lengthUnitKeys.map((key) => ({ value: key, label: lengthUnits[key].symbol }))}
          value={unit}
          onChange={(value) => isLengthUnit(value) && setUnit(value)}
        />
      </div>
    </>
  )
}
