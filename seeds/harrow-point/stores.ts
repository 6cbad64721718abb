import {
  aBearingType,
  aKit,
  aKitLine,
  aPart,
  designationOf,
  type BearingTypeRow,
  type KitLineRow,
  type KitRow,
  type PartRow,
} from '../builders/catalogue-rows.ts'
import { wantedParts, type KitPlace, type WantedPart } from '../builders/position-kit.ts'
import type { Random } from '../random.ts'
import { bearingSpecs, type BearingName } from './layout.ts'

/** The catalogue of bearing types, parts and kits, grown as positions ask for them; equal positions share a kit. */
export interface Stores {
  bearingType(name: BearingName): BearingTypeRow
  kit(place: KitPlace): KitRow
  rows: { bearingTypes: BearingTypeRow[]; parts: PartRow[]; kits: KitRow[]; kitLines: KitLineRow[] }
}

export function makeStores(siteId: string, random: Random, since: Date): Stores {
  const id = (): string => random.uuidAt(since)
  const types = new Map<BearingName, BearingTypeRow>()
  const parts = new Map<string, PartRow>()
  const kits = new Map<string, KitRow>()
  const kitLines: KitLineRow[] = []

  const bearingType = (name: BearingName): BearingTypeRow =>
    known(types, name, () => {
      const { basicCode, kind, taper, clearanceClass } = bearingSpecs[name]
      const ball = kind === 'self-aligning-ball' ? { boreMm: 90, outsideDiameterMm: 160, widthMm: 30 } : {}
      return aBearingType({ siteId, id: id(), basicCode, kind, taper, clearanceClass, ...ball })
    })
  const part = (wanted: WantedPart): PartRow =>
    known(parts, wanted.designation, () => {
      const { kind, designation, description } = wanted
      return aPart({ siteId, id: id(), kind, designation, description, ...shelf(kind, parts.size) })
    })
  const kit = (place: KitPlace): KitRow =>
    known(kits, kitName(place), () => {
      const row = aKit({ siteId, id: id(), name: kitName(place) })
      for (const [index, wanted] of wantedParts(place).entries()) {
        const { quantity, unit, need, reason } = wanted
        const line = { kitId: row.id, partId: part(wanted).id, lineNumber: index + 1, quantity, unit, need, reason }
        kitLines.push(aKitLine({ siteId, id: id(), ...line }))
      }
      return row
    })
  return {
    bearingType,
    kit,
    get rows() {
      return { bearingTypes: [...types.values()], parts: [...parts.values()], kits: [...kits.values()], kitLines }
    },
  }
}

function known<Key, Row>(rows: Map<Key, Row>, key: Key, make: () => Row): Row {
  const row = rows.get(key) ?? make()
  rows.set(key, row)
  return row
}

function kitName({ bearingType, housingCode, locating, shaftDiameterMm, greaseName }: KitPlace): string {
  const { basicCode, taper, clearanceClass } = bearingType
  const seat = housingCode ?? `shaft ${shaftDiameterMm}`
  const end = locating ? 'locating' : 'non-locating'
  return `${designationOf(basicCode, taper, clearanceClass)}, ${seat}, ${end}, ${greaseName}`
}

const aisles: Partial<Record<PartRow['kind'], string>> = { bearing: 'A', sleeve: 'B', nut: 'B', washer: 'B', ring: 'C' }

/** The next number and a bin: aisle by kind of part, then bay and shelf. */
function shelf(kind: PartRow['kind'], already: number): Pick<PartRow, 'number' | 'bin'> {
  const bay = String(1 + (already % 12)).padStart(2, '0')
  return { number: `HP-${10_010 + already * 10}`, bin: `${aisles[kind] ?? 'D'}-${bay}-${1 + (already % 4)}` }
}
