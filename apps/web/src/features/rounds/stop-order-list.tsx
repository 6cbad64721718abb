import { ActionIcon, Button } from '@mantine/core'
import type { ProposedStop } from '@shaftbook/contract/rounds'
import { useState } from 'react'
import { moved } from './stop-order.ts'
import { taskWords } from './round-words.ts'
import classes from './rounds.module.css'

export type ChosenStop = ProposedStop & { id: string }

interface StopOrderListProps {
  stops: readonly ChosenStop[]
  onChange: (stops: ChosenStop[]) => void
  onWalkingOrder: () => void
}

/** The stops of a round in order: dragged with the mouse, or moved by buttons, which keyboards and gloves reach too. */
export function StopOrderList({ stops, onChange, onWalkingOrder }: StopOrderListProps) {
  const [dragged, setDragged] = useState<number | null>(null)
  const [said, setSaid] = useState('')
  const move = (from: number, to: number): void => {
    onChange(moved(stops, from, to))
    if (to >= 0 && to < stops.length) setSaid(`${stops[from]?.tag} is stop ${to + 1} of ${stops.length}.`)
  }
  if (stops.length === 0) return <p className={classes.soft}>No stops yet: add them from the list of positions.</p>
  return (
    <>
      <div className={classes.orderHead}>
        <p>{stops.length === 1 ? '1 stop' : `${stops.length} stops`}</p>
        <Button variant="default" onClick={onWalkingOrder}>
          Put in walking order
        </Button>
      </div>
      <ol className={classes.order} aria-label="Stops in order">
        {stops.map((stop, index) => (
          // dragging is for the mouse: the buttons do the same for keyboard and gloves
          // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
          <li
            key={stop.id}
            draggable
            data-dragged={dragged === index || undefined}
            onDragStart={(event) => {
              event.dataTransfer.effectAllowed = 'move'
              setDragged(index)
            }}
            onDragEnter={() => {
              if (dragged === null || dragged === index) return
              move(dragged, index)
              setDragged(index)
            }}
            onDragOver={(event) => event.preventDefault()}
            onDragEnd={() => setDragged(null)}
          >
            <span className={classes.number}>{index + 1}</span>
            <span className={classes.stop}>
              <strong>{stop.tag}</strong>
              <span className={classes.soft}>
                {stop.machineName}, {stop.areaName}
                {stop.task !== 'regrease' && ` · ${taskWords[stop.task]}`}
              </span>
            </span>
            <span className={classes.moves}>
              <ActionIcon
                variant="default"
                size={44}
                aria-label={`Move ${stop.tag} up`}
                disabled={index === 0}
                onClick={() => move(index, index - 1)}
              >
                ↑
              </ActionIcon>
              <ActionIcon
                variant="default"
                size={44}
                aria-label={`Move ${stop.tag} down`}
                disabled={index === stops.length - 1}
                onClick={() => move(index, index + 1)}
              >
                ↓
              </ActionIcon>
              <ActionIcon
                variant="default"
                size={44}
                aria-label={`Take ${stop.tag} out`}
                onClick={() => onChange(stops.filter(({ id }) => id !== stop.id))}
              >
                ×
              </ActionIcon>
            </span>
          </li>
        ))}
      </ol>
      <output className="visually-hidden">{said}</output>
    </>
  )
}
