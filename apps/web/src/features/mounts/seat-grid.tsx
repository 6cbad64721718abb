import { TextInput } from '@mantine/core'
import { useSheet } from './sheet-context.ts'
import { hasOwnUnit, rowNumbers, typedFault } from './sheet-numbers.ts'
import { seatPlaces, type SeatPlace } from './sheet.ts'
import classes from './sheet.module.css'

/** Three planes along the seat by two directions at right angles, in millimetres. */
export function SeatGrid({ seat, title }: { seat: 'shaft' | 'housing'; title: string }) {
  const { sheet, change, faultOf } = useSheet()
  const texts = sheet[seat]
  const put = (place: SeatPlace, typed: string): void => change({ [seat]: { ...texts, [place]: typed } })
  const faults = seatPlaces.map(
    (place) => faultOf(`${seat}.${place}`) ?? typedFault(texts[place], rowNumbers.diameterMm),
  )
  const fault = faults.find((each) => each !== undefined)
  return (
    <fieldset className={classes.grid}>
      <legend className={classes.label}>{title}</legend>
      <div className={classes.gridHead} aria-hidden="true">
        <span>Plane</span>
        <span>Across</span>
        <span>Turned by 90°</span>
      </div>
      {[1, 2, 3].map((plane) => (
        <div key={plane} className={classes.gridRow}>
          <span className={classes.gridName} aria-hidden="true">
            {plane}
          </span>
          {(['x', 'y'] as const).map((direction) => {
            const place = `${plane}${direction}` as SeatPlace
            return (
              <TextInput
                key={place}
                aria-label={`${title}, plane ${plane}, ${direction === 'x' ? 'across' : 'turned by 90°'}, mm`}
                size="touch"
                value={texts[place]}
                error={faults[seatPlaces.indexOf(place)] !== undefined}
                onChange={(event) => put(place, event.currentTarget.value)}
                inputMode="decimal"
                autoComplete="off"
                enterKeyHint="next"
                rightSection={<span className={classes.readingUnit}>{!hasOwnUnit(texts[place]) && 'mm'}</span>}
                rightSectionWidth={44}
                rightSectionPointerEvents="none"
                classNames={{ input: classes.gridInput }}
              />
            )
          })}
        </div>
      ))}
      {fault && <p className={classes.fault}>{fault}</p>}
    </fieldset>
  )
}
