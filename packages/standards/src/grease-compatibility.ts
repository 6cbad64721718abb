import { greaseCompatibilityTable, type GreaseCompatibilityRow } from './grease-compatibility.data.ts'

export type Thickener = Exclude<keyof GreaseCompatibilityRow, 'thickener' | 'certainty'>

/** C: published as compatible by every chart compared. B: borderline, test the mix. I: incompatible. */
export type GreaseRating = 'C' | 'B' | 'I'

export type GreaseCompatibility =
  { readonly found: true; readonly rating: GreaseRating } | { readonly found: false; readonly reason: string }

/** Names for people of the thickener families of the compatibility table. */
export const thickenerNames: Readonly<Record<Thickener, string>> = Object.freeze({
  lithium12oh: 'lithium (12-hydroxystearate)',
  lithiumComplex: 'lithium complex',
  lithiumCalcium: 'lithium-calcium',
  calciumHydrous: 'calcium, hydrous',
  calciumAnhydrous: 'calcium, anhydrous',
  calciumComplex: 'calcium complex',
  calciumSulfonate: 'calcium sulfonate complex',
  aluminiumComplex: 'aluminium complex',
  sodium: 'sodium',
  bariumComplex: 'barium complex',
  clay: 'clay',
  polyureaConventional: 'polyurea, conventional',
  polyureaShearStable: 'polyurea, shear stable',
  ptfePfpe: 'PTFE in perfluoropolyether',
})

/**
 * Worst published rating for mixing two thickeners. Advice only: published charts contradict each other, no standard
 * gives such a table (test: ASTM D6185), and the base oils have to agree too. Unknown thickeners have no rating.
 */
export function greaseCompatibility(one: string, other: string): GreaseCompatibility {
  if (!isThickener(one)) return { found: false, reason: `The compatibility table has no thickener "${one}".` }
  if (!isThickener(other)) return { found: false, reason: `The compatibility table has no thickener "${other}".` }
  const row = greaseCompatibilityTable.rows.find((candidate) => thickenerOf(candidate) === one)
  const rating = row?.[other]
  if (rating === 'C' || rating === 'B' || rating === 'I') return { found: true, rating }
  return { found: false, reason: `The compatibility table has no rating for ${one} with ${other}.` }
}

export function isThickener(name: string): name is Thickener {
  return Object.hasOwn(thickenerNames, name)
}

function thickenerOf(row: GreaseCompatibilityRow): string {
  return row.thickener.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase())
}
