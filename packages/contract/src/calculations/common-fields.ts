import { choice, quantities, quantity, text } from './field.ts'
import { word } from './figure.ts'

export const boreMm = quantity('Bore d', 'mm', 3, 2000)
export const outsideDiameterMm = quantity('Outside diameter D', 'mm', 10, 3000)
export const widthMm = quantity('Width B', 'mm', 3, 1000)
export const meanDiameterMm = quantity('Mean diameter dm', 'mm', 5, 3000, '(d + D) / 2')
export const speedRpm = quantity('Speed', 'rev/min', 0.1, 50_000)
export const innerRacewayMm = quantity('Inner raceway F', 'mm', 3, 3000, 'From the maker; else (3 d + D) / 4 is taken')
export const outerRacewayMm = quantity('Outer raceway', 'mm', 3, 3000, 'From the maker; else (d + 3 D) / 4 is taken')
export const shaftBoreMm = quantity('Bore of a hollow shaft', 'mm', 0, 1900, 'Left empty for a solid shaft')
export const bearing = text('Bearing', 'Such as 22220 K/C3')
export const nutCode = text('Nut', 'Such as KM20 or HM3160')

export const taper = choice('Taper of the bore', { '1:12': 'K, 1:12', '1:30': 'K30, 1:30' })
export const boreKind = choice('Bore', { tapered: 'tapered (K or K30)', cylindrical: 'cylindrical' })
export const clearanceClass = choice('Clearance class', { C2: 'C2', CN: 'CN', C3: 'C3', C4: 'C4', C5: 'C5' })
export const rollingElement = choice('Rolling elements', { roller: 'rollers', ball: 'balls' })
export const acceptance = {
  simple: 'inside the limits as read',
  proven: 'proven, with the uncertainty kept clear of the limit',
}

/** A clearance, in µm. */
export function clearance(title: string, hint?: string) {
  return quantity(title, 'µm', 0, 2000, hint)
}

/** Feeler readings of one row of rollers. */
export function rowReadings(title: string) {
  return quantities(title, 'µm', 0, 2000, 20)
}

export const bandVerdict = word('Verdict', {
  inside: 'inside',
  under: 'under',
  over: 'over',
  'not-proven': 'not proven',
})
