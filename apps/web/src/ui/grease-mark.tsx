import classes from './grease-mark.module.css'

interface GreaseMarkProps {
  name: string
  /** The place of the grease in the order in which the site entered its greases: it chooses the shape. */
  place: number
}

const shapes = [
  'M8 1.5a6.5 6.5 0 1 0 0 13a6.5 6.5 0 1 0 0-13Z',
  'M2 2h12v12H2Z',
  'M8 1.5 15 14H1Z',
  'M8 .8 15.2 8 8 15.2.8 8Z',
  'M5.5 1.5h5v4h4v5h-4v4h-5v-4h-4v-5h4Z',
  'M1 4.5h14v7H1Z',
]

/** A grease by name and shape: two greases of a site look different at arm's length and without colour. */
export function GreaseMark({ name, place }: GreaseMarkProps) {
  const hollow = Math.floor(place / shapes.length) % 2 === 1
  return (
    <span className={classes.mark}>
      <svg viewBox="0 0 16 16" width="18" height="18" aria-hidden="true" focusable="false">
        <path d={shapes[place % shapes.length]} className={hollow ? classes.hollow : classes.solid} />
      </svg>
      <span>{name}</span>
    </span>
  )
}

/** The place of each grease by its id, in the order in which they were entered. */
export function greasePlaces(greases: readonly { id: string; createdAt: string }[]): ReadonlyMap<string, number> {
  const order = greases.toSorted((a, b) => (a.createdAt + a.id < b.createdAt + b.id ? -1 : 1))
  return new Map(order.map(({ id }, index) => [id, index]))
}
