import type { BandBearing, BandPosition } from './band-of-position.ts'

/** For tests: a 22220 K/C3. Over 80 up to 100 mm the guide has 45 to 60 µm, and a residual minimum of 50 µm for C3. */
export const bearing: BandBearing = {
  kind: 'spherical-roller',
  series: '222',
  boreMm: 100,
  taper: '1:12',
  clearanceClass: 'C3',
}

/** For tests: a position with a sleeve and no band of its own. */
export const position: BandPosition = {
  seat: 'adapter-sleeve',
  ownReductionMinUm: null,
  ownReductionMaxUm: null,
  ownResidualMinUm: null,
  ownBandSource: null,
}
