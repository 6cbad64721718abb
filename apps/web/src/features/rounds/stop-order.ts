/** The list with the item at `from` standing at `to`; a place outside the list leaves it as it is. */
export function moved<T>(items: readonly T[], from: number, to: number): T[] {
  const item = items[from]
  if (item === undefined || to < 0 || to >= items.length || from === to) return [...items]
  return items.toSpliced(from, 1).toSpliced(to, 0, item)
}

interface Walked {
  readonly areaId: string
  readonly machineTag: string
  readonly tag: string
  readonly task: string
}

/** Stops in the walking order of areas, then by machine tag, position tag and task; areas that are not named come last. */
export function inWalkingOrder<T extends Walked>(stops: readonly T[], areaIds: readonly string[]): T[] {
  const placeOf = (areaId: string): number => {
    const at = areaIds.indexOf(areaId)
    return at === -1 ? areaIds.length : at
  }
  return stops.toSorted(
    (a, b) =>
      placeOf(a.areaId) - placeOf(b.areaId) ||
      byText(a.machineTag, b.machineTag) ||
      byText(a.tag, b.tag) ||
      byText(a.task, b.task),
  )
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
