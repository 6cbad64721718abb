/** A grease of the site's list. */
export interface SiteGrease {
  id: string
  name: string
  createdAt: string
}

/** The guns to choose from, and none. */
export function gunChoices(guns: readonly { id: string; name: string; gramsPerStroke: number }[]) {
  return [
    ...guns.map(({ id, name, gramsPerStroke }) => ({ value: id, label: `${name}, ${gramsPerStroke} g a stroke` })),
    { value: '', label: 'None: I weigh the dose in grams' },
  ]
}
