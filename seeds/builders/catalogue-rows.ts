import type { z } from 'zod'
import type { BearingKind, ClearanceClass, PartKind, Taper } from '@shaftbook/contract/register-tables'
import { srbByBasicCode } from '@shaftbook/standards/srb-dimensions'
import { v7 as newId } from 'uuid'
import type { Overrides, SiteOwned } from './site-rows.ts'

type Class = z.infer<typeof ClearanceClass>
type BearingTaper = z.infer<typeof Taper>

export interface BearingTypeRow extends SiteOwned {
  designation: string
  basicCode: string
  series: string
  kind: z.infer<typeof BearingKind>
  boreMm: number
  outsideDiameterMm: number
  widthMm: number
  taper: BearingTaper | null
  clearanceClass: Class
  massKg: number | null
  dynamicLoadRatingKn: number | null
  staticLoadRatingKn: number | null
  sealed: boolean
}

/**
 * A bearing type; a spherical roller bearing takes its dimensions from the table of ISO 15 by its basic code (default
 * 22220), any other kind has to say them. Mass and ratings are not tabled: the ones here are an invented maker's.
 */
export function aBearingType(over: Overrides<BearingTypeRow>): BearingTypeRow {
  const basicCode = over.basicCode ?? '22220'
  const taper = over.taper === undefined ? '1:12' : over.taper
  const clearanceClass = over.clearanceClass ?? 'C3'
  const dimensions = { ...tabledDimensions(basicCode, over.kind ?? 'spherical-roller'), ...over }
  const { boreMm, outsideDiameterMm, widthMm } = dimensions
  if (boreMm === undefined || outsideDiameterMm === undefined || widthMm === undefined) {
    throw new Error(`The dimensions of ${basicCode} are not tabled: give boreMm, outsideDiameterMm and widthMm.`)
  }
  return {
    designation: designationOf(basicCode, taper, clearanceClass),
    kind: 'spherical-roller',
    series: basicCode.slice(0, -2),
    ...inventedRatings(boreMm, outsideDiameterMm, widthMm),
    sealed: false,
    ...over,
    id: over.id ?? newId(),
    basicCode,
    taper,
    clearanceClass,
    boreMm,
    outsideDiameterMm,
    widthMm,
  }
}

/** 22220, 1:12 and C3 are written 22220 K/C3. */
export function designationOf(basicCode: string, taper: BearingTaper | null, clearanceClass: Class): string {
  const suffixes = [
    taper === '1:12' ? 'K' : taper === '1:30' ? 'K30' : '',
    clearanceClass === 'CN' ? '' : clearanceClass,
  ]
  const present = suffixes.filter((suffix) => suffix !== '')
  return present.length === 0 ? basicCode : `${basicCode} ${present.join('/')}`
}

type Dimensions = Pick<BearingTypeRow, 'boreMm' | 'outsideDiameterMm' | 'widthMm'>

function tabledDimensions(basicCode: string, kind: BearingTypeRow['kind']): Partial<Dimensions> {
  if (kind !== 'spherical-roller') return {}
  const lookup = srbByBasicCode(basicCode)
  if (!lookup.found) return {}
  const { boreMm, outsideDiameterMm, widthMm } = lookup.row
  return { boreMm, outsideDiameterMm, widthMm }
}

function inventedRatings(boreMm: number, outsideMm: number, widthMm: number) {
  const ringVolumeMm3 = (Math.PI / 4) * widthMm * (outsideMm ** 2 - boreMm ** 2)
  const dynamicKn = 0.65 * (widthMm * (outsideMm - boreMm)) ** 0.79
  return {
    massKg: Math.round(ringVolumeMm3 * 7.8e-6 * 0.78 * 10) / 10,
    dynamicLoadRatingKn: Math.round(dynamicKn / 5) * 5,
    staticLoadRatingKn: Math.round((dynamicKn * 1.2) / 5) * 5,
  }
}

export interface GreaseRow extends SiteOwned {
  name: string
  thickener: string
  nlgiGrade: string
  baseOilViscosity40cMm2s: number | null
  code: string | null
}
export function aGrease(over: Overrides<GreaseRow>): GreaseRow {
  const id = over.id ?? newId()
  const plain = { thickener: 'lithiumComplex', nlgiGrade: '2', baseOilViscosity40cMm2s: 220, code: 'KP2N-20' }
  return { name: `Grease ${id.slice(-6)}`, ...plain, ...over, id }
}

export interface MakerChartRow extends SiteOwned {
  maker: string
  document: string
  edition: string
  page: string | null
}
export function aMakerChart(over: Overrides<MakerChartRow>): MakerChartRow {
  const id = over.id ?? newId()
  return { maker: 'A maker', document: `Sheet ${id.slice(-6)}`, edition: '1', page: null, ...over, id }
}

export interface MakerChartBandRow extends SiteOwned {
  chartId: string
  overMm: number
  inclMm: number
  taper: BearingTaper
  clearanceClass: 'C2' | 'CN' | 'C3' | 'C4' | 'C5' | null
  reductionMinNm: number
  reductionMaxNm: number
  residualMinCnNm: number | null
  residualMinC3Nm: number | null
  residualMinC4Nm: number | null
  driveUpMinMm: number | null
  driveUpMaxMm: number | null
}
/** One row of a maker's chart, for bores over 80 up to 100 mm unless said otherwise. */
export function aMakerChartBand(over: Overrides<MakerChartBandRow> & { chartId: string }): MakerChartBandRow {
  const residual = { residualMinCnNm: 35_000, residualMinC3Nm: 50_000, residualMinC4Nm: 80_000 }
  const plain = { overMm: 80, inclMm: 100, reductionMinNm: 45_000, reductionMaxNm: 60_000, ...residual }
  return {
    ...plain,
    taper: '1:12',
    clearanceClass: null,
    driveUpMinMm: 0.7,
    driveUpMaxMm: 0.9,
    ...over,
    id: over.id ?? newId(),
  }
}

export interface PartRow extends SiteOwned {
  number: string
  designation: string
  kind: z.infer<typeof PartKind>
  description: string
  bin: string | null
}
export function aPart(over: Overrides<PartRow>): PartRow {
  const id = over.id ?? newId()
  return { number: `P-${id.slice(-8)}`, designation: 'A part', kind: 'other', description: '', bin: null, ...over, id }
}

export interface KitRow extends SiteOwned {
  name: string
  note: string
}
export function aKit(over: Overrides<KitRow>): KitRow {
  const id = over.id ?? newId()
  return { name: `Kit ${id.slice(-8)}`, note: '', ...over, id }
}

export interface KitLineRow extends SiteOwned {
  kitId: string
  lineNumber: number
  partId: string
  quantity: number
  unit: string
  need: 'must' | 'may'
  reason: string
}
export function aKitLine(over: Overrides<KitLineRow> & { kitId: string; partId: string }): KitLineRow {
  return { lineNumber: 1, quantity: 1, unit: 'pc', need: 'must', reason: '', ...over, id: over.id ?? newId() }
}
