import type { MountDetails } from '@shaftbook/contract/mount-details'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { lengthUnits } from '../../lib/length-units.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { ScrollBox } from '../../ui/scroll-box.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './mount-record.module.css'

type Seat = NonNullable<MountDetails['seat']>

const decisionWords = {
  'use-again': 'used again',
  repaired: 'repaired',
  replaced: 'replaced',
  'engineer-asked': 'the engineer was asked',
} as const

/** Diameters of shaft and housing by plane and direction, and what became of both. */
export function RecordSeat({ seat }: { seat: Seat }) {
  const facts: (Definition | false)[] = [
    seat.shaftSystem !== null && {
      label: 'The shaft is',
      value: seat.shaftSystem === 'inch' ? 'an inch one' : 'metric',
    },
    seat.shaftSurface !== null && { label: 'Surface', value: seat.shaftSurface },
    seat.shaftDecision !== null && { label: 'Shaft', value: decisionWords[seat.shaftDecision] },
    seat.housingSeatWidthMm !== null && { label: 'Width of the seat', value: `${seat.housingSeatWidthMm} mm` },
    seat.softFootMm !== null && { label: 'Soft foot', value: `${seat.softFootMm} mm` },
    seat.housingDecision !== null && { label: 'Housing', value: decisionWords[seat.housingDecision] },
    seat.note !== '' && { label: 'Remark', value: seat.note },
  ]
  return (
    <>
      {(['shaft', 'housing'] as const).map(
        (part) => seat[part].length > 0 && <Diameters key={part} part={part} readings={seat[part]} />,
      )}
      <DefinitionList items={facts.filter((fact) => fact !== false)} />
    </>
  )
}

function Diameters({ part, readings }: { part: 'shaft' | 'housing'; readings: Seat['shaft'] }) {
  const at = (plane: number, direction: 'x' | 'y'): string =>
    String(readings.find((each) => each.plane === plane && each.direction === direction)?.diameterMm ?? '–')
  return (
    <table className={classes.readings}>
      <caption className={classes.caption}>{part === 'shaft' ? 'Shaft' : 'Housing bore'}, mm</caption>
      <thead>
        <tr>
          <th scope="col">Plane</th>
          <th scope="col">Across</th>
          <th scope="col">Turned by 90°</th>
        </tr>
      </thead>
      <tbody>
        {[1, 2, 3].map((plane) => (
          <tr key={plane}>
            <th scope="row">{plane}</th>
            <td>{at(plane, 'x')}</td>
            <td>{at(plane, 'y')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const foundWords = {
  'as-planned': 'as planned',
  other: 'another',
  missing: 'missing',
  'not-needed': 'not needed',
} as const

/** What lay on the bench beside what the kit plans. */
export function RecordKitCheck({ lines }: { lines: MountDetails['kitCheck'] }) {
  return (
    <ScrollBox label="Lines of the kit check">
      <table className={classes.readings} data-text>
        <thead>
          <tr>
            <th scope="col">Planned</th>
            <th scope="col">On the bench</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ kitLineId, plannedCode, kind, found, foundCode, quantity, unit, reason }, at) => (
            <tr key={kitLineId ?? at}>
              <th scope="row">
                {plannedCode || kind} <span className={classes.soft}>{`${quantity} ${unit}`}</span>
              </th>
              <td>{found === 'other' ? foundCode || 'another' : foundWords[found]}</td>
              <td>{reason || '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  )
}

/** Every step of the drive-up as typed; a mistyped one stays to be read, struck out. */
export function RecordDriveSteps({ record }: { record: MountRecord }) {
  const typedAt = (step: number, row: 'A' | 'B'): string => {
    const read = record.readings.find((each) => each.moment === 'step' && each.step === step && each.row === row)
    return read ? `${read.typedValue} ${lengthUnits[read.typedUnit].symbol}` : '–'
  }
  return (
    <ScrollBox label="Steps of the drive-up">
      <table className={classes.readings}>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Row A</th>
            <th scope="col">Row B</th>
            <th scope="col">Travel, mm</th>
            <th scope="col">Nut, °</th>
          </tr>
        </thead>
        <tbody>
          {record.details.driveSteps.map(({ number, driveUpMm, nutAngleDeg, struck }) => (
            <tr key={number} data-struck={struck || undefined}>
              <th scope="row">
                {number}
                {struck && <span className="visually-hidden">, struck out</span>}
              </th>
              <td>{typedAt(number, 'A')}</td>
              <td>{typedAt(number, 'B')}</td>
              <td>{driveUpMm ?? '–'}</td>
              <td>{nutAngleDeg ?? '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  )
}

/** The first run, or why it comes later. */
export function RecordStartUp({ startUp }: { startUp: NonNullable<MountDetails['startUp']> }) {
  const { site } = useSite()
  const { startedAt, readings, twinTemperatureC, zone, lockChecked, notDoneReason, note } = startUp
  const facts: (Definition | false)[] = [
    notDoneReason !== null && { label: 'Comes later', value: notDoneReason },
    startedAt !== null && {
      label: 'Started',
      value: <Timestamp at={startedAt} timeZone={site.timeZone} relative={false} />,
    },
    twinTemperatureC !== null && { label: 'Its twin', value: `${twinTemperatureC} °C` },
    zone !== null && { label: 'Vibration zone, ISO 20816', value: zone },
    lockChecked !== null && { label: 'Lock and bolts looked at after it', value: lockChecked ? 'yes' : 'not yet' },
    note !== '' && { label: 'Remark', value: note },
  ]
  return (
    <>
      {readings.length > 0 && (
        <table className={classes.readings}>
          <caption className="visually-hidden">Readings of the first run</caption>
          <thead>
            <tr>
              <th scope="col">After, min</th>
              <th scope="col">Housing, °C</th>
              <th scope="col">Vibration, mm/s</th>
            </tr>
          </thead>
          <tbody>
            {readings.map(({ minutes, temperatureC, vibrationMmS }, at) => (
              <tr key={at}>
                <th scope="row">{minutes}</th>
                <td>{temperatureC ?? '–'}</td>
                <td>{vibrationMmS ?? '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <DefinitionList items={facts.filter((fact) => fact !== false)} />
    </>
  )
}
