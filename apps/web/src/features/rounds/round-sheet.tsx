import { NativeSelect } from '@mantine/core'
import type { Gun } from '@shaftbook/contract/guns'
import type { Round } from '@shaftbook/contract/rounds'
import { useState } from 'react'
import { DueMark } from '../../ui/due-mark.tsx'
import { GreaseMark, greasePlaces } from '../../ui/grease-mark.tsx'
import { gunChoices, type SiteGrease } from './gun-choices.ts'
import { entryWords, taskWords } from './round-words.ts'
import { plannedStrokes } from './stop-strokes.ts'
import classes from './round-sheet.module.css'

interface RoundSheetProps {
  round: Round
  guns: readonly Gun[]
  greases: readonly SiteGrease[]
}

/** What is written by hand on the paper. */
const written = ['Given', 'Old grease', 'Relief closed', '°C', 'Skipped, why']

/** The stops of a round as a list; on paper with room to write on. */
export function RoundSheet({ round, guns, greases }: RoundSheetProps) {
  const [gunId, setGunId] = useState('')
  const gun = guns.find(({ id }) => id === gunId)
  const places = greasePlaces(greases)
  return (
    <>
      <div className={classes.choice}>
        <NativeSelect
          label="Doses in strokes of"
          value={gunId}
          onChange={(event) => setGunId(event.currentTarget.value)}
          data={gunChoices(guns).map(({ value, label }) => ({
            value,
            label: value === '' ? 'No gun: grams only' : label,
          }))}
        />
      </div>
      <table className={classes.sheet}>
        <caption className="visually-hidden">Stops of the round {round.name}</caption>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Position</th>
            <th scope="col">What goes in</th>
            <th scope="col" className={classes.screen}>
              State
            </th>
            {written.map((title) => (
              <th key={title} scope="col" className={classes.paper}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {round.stops.map((stop, index) => (
            <tr key={stop.id}>
              <td>{index + 1}</td>
              <th scope="row">
                {stop.tag}
                <span className={classes.soft}>
                  {stop.machineName}, {stop.positionName.toLowerCase()}; {stop.areaName}
                </span>
              </th>
              <td>
                {stop.greaseName === null ? (
                  taskWords[stop.task]
                ) : (
                  <GreaseMark name={stop.greaseName} place={places.get(stop.greaseId ?? '') ?? 0} />
                )}
                <span className={classes.soft}>
                  {doseText(stop.doseG, gun)}
                  {stop.entry && ` · ${entryWords[stop.entry].toLowerCase()}`}
                </span>
              </td>
              <td className={classes.screen}>{stop.dueState && <DueMark state={stop.dueState} />}</td>
              {written.map((title) => (
                <td key={title} className={classes.paper}>
                  {' '}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className={classes.signature}>Walked by, on</p>
    </>
  )
}

function doseText(doseG: number | null, gun: Gun | undefined): string {
  if (doseG === null) return ''
  const strokes = gun && plannedStrokes(doseG, gun.gramsPerStroke)
  return strokes ? `${strokes} strokes, ${doseG} g` : `${doseG} g`
}
