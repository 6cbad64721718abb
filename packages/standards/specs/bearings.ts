import { confidence, type TableSpec } from './spec.ts'

const classColumns = {
  over_mm: 'overMm',
  incl_mm: 'inclMm',
  ...Object.fromEntries(
    ['C2', 'CN', 'C3', 'C4', 'C5'].flatMap((name) => [
      [`${name}_min`, `${name.toLowerCase()}MinUm`],
      [`${name}_max`, `${name.toLowerCase()}MaxUm`],
    ]),
  ),
}

/** Cells of the cylindrical-bore table for which print is remembered with another number. */
const cylindricalVariants: Record<string, string> = {
  '65': 'C5 maximum: another print has 180 µm',
  '355': 'C5 maximum: another print has 740 µm',
}

export const bearingTables: TableSpec[] = [
  {
    csv: 'iso5753_srb_tapered_bore',
    file: 'clearance-tapered-bore',
    rowType: 'ClearanceRow',
    constant: 'clearanceTaperedBore',
    title: 'Radial internal clearance of spherical roller bearings with tapered bore',
    standard: 'ISO 5753-1',
    edition: null,
    fields: classColumns,
    derive: (row) => ({ note: null, certainty: Number(row['incl_mm']) <= 500 ? 'high' : 'medium-high' }),
  },
  {
    csv: 'iso5753_srb_cylindrical_bore',
    file: 'clearance-cylindrical-bore',
    rowType: 'ClearanceRow',
    constant: 'clearanceCylindricalBore',
    title: 'Radial internal clearance of spherical roller bearings with cylindrical bore',
    standard: 'ISO 5753-1',
    edition: null,
    fields: classColumns,
    derive: (row) => ({
      note: cylindricalVariants[row['over_mm'] ?? ''] ?? null,
      certainty: Number(row['incl_mm']) <= 355 ? 'high' : 'medium',
    }),
  },
  {
    csv: 'generic_reduction_guide',
    file: 'reduction-guide',
    rowType: 'ReductionGuideRow',
    constant: 'reductionGuideTable',
    title: 'Generic guide for the reduction of clearance on a taper',
    standard: 'trade practice, no standard',
    edition: null,
    fields: {
      over_mm: 'overMm',
      incl_mm: 'inclMm',
      reduction_min_mm: 'reductionMinUm',
      reduction_max_mm: 'reductionMaxUm',
      driveup_1_12_min_mm: 'driveUp12MinMm',
      driveup_1_12_max_mm: 'driveUp12MaxMm',
      driveup_1_30_min_mm: 'driveUp30MinMm',
      driveup_1_30_max_mm: 'driveUp30MaxMm',
      residual_min_CN_mm: 'residualMinCnUm',
      residual_min_C3_mm: 'residualMinC3Um',
      residual_min_C4_mm: 'residualMinC4Um',
      arith_CNmin_minus_redmin_mm: null,
      arith_C3min_minus_redmax_mm: null,
      arith_C4min_minus_redmax_mm: null,
      ...confidence,
    },
  },
  {
    csv: 'srb_boundary_dimensions',
    file: 'srb-dimensions',
    rowType: 'SrbDimensionsRow',
    constant: 'srbDimensionsTable',
    title: 'Boundary dimensions of spherical roller bearings',
    standard: 'ISO 15',
    edition: null,
    fields: {
      basic_code: 'basicCode',
      bearing_series: 'series',
      dimension_series: 'dimensionSeries',
      bore_code: 'boreCode',
      d_mm: 'boreMm',
      D_mm: 'outsideDiameterMm',
      B_mm: 'widthMm',
      r_min_mm: 'chamferMinMm',
      taper_if_K_bore: 'taper',
      mean_diameter_dm_mm: 'meanDiameterMm',
      est_inner_raceway_dia_mm: null,
      est_outer_raceway_dia_mm: null,
      ...confidence,
    },
    text: ['basicCode', 'series', 'dimensionSeries'],
  },
]
