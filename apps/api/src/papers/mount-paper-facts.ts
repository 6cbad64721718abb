import type { MountRecord } from '@shaftbook/contract/mounts'
import { failureModeByClause } from '@shaftbook/standards/failure-modes'
import type { Fact } from './blocks.ts'
import { methodWords } from './mount-paper-parts.ts'
import { dayWords, plainNumber, plantTime, withUnit } from './words.ts'

export function peopleFacts(record: MountRecord, timeZone: string): Fact[] {
  return [
    { label: 'Mounted', value: plantTime(record.mountedAt, timeZone) },
    { label: 'Fitted by', value: record.fitter },
    { label: 'Checked by', value: record.checker },
    {
      label: 'Signed',
      value: record.signedAt
        ? `${record.signedBy ?? ''}, ${plantTime(record.signedAt, timeZone)}`
        : 'not signed: a draft',
    },
    { label: 'Why fitted', value: record.reason },
    { label: 'Permit reference', value: record.permitReference },
    { label: 'Cautions seen by', value: record.details.cautionsSeenBy },
    { label: 'Run hours', value: withUnit(record.runHours, 'h') },
    { label: 'No reading because', value: record.noHoursReason },
    { label: 'Clock of', value: timeZone },
  ]
}

export function workFacts(record: MountRecord, photos: readonly string[]): Fact[] {
  const { turnsFree } = record
  return [
    { label: 'Method', value: methodWords[record.method] },
    { label: 'Judged by feel by', value: record.byFeelPerson },
    { label: 'Feeler set', value: record.gauge },
    { label: 'Temperature', value: withUnit(record.temperatureC, '°C') },
    { label: 'Zero point', value: record.zeroPointMethod },
    { label: 'Axial travel', value: withUnit(record.driveUpMm, 'mm') },
    { label: 'Nut turned', value: withUnit(record.nutAngleDeg, '°') },
    { label: 'Shaft diameter', value: withUnit(record.shaftDiameterMm, 'mm') },
    { label: 'Turned by hand', value: turnsFree === null ? null : turnsFree ? 'free, no drag' : 'not free' },
    { label: 'Photos', value: photoWords(photos) },
  ]
}

export function partFacts(record: MountRecord, greaseName: string | null): Fact[] {
  const { bearing, ringCount, ringWidthMm } = record
  const rings = ringCount === 0 ? 'none' : `${ringCount} of ${ringWidthMm === null ? '?' : plainNumber(ringWidthMm)} mm`
  const bore = `bore ${plainNumber(bearing.boreMm)} mm${bearing.taper ? `, taper ${bearing.taper}` : ''}`
  return [
    { label: 'Bearing', value: `${bearing.designation}, ${bore}` },
    { label: 'Class', value: record.clearanceClass },
    { label: 'Serial number', value: bearing.serial },
    { label: 'Lot', value: bearing.lot },
    { label: 'Maker', value: bearing.maker },
    { label: 'Packed on', value: bearing.packedOn && dayWords(bearing.packedOn) },
    { label: 'Sleeve', value: record.sleeveCode },
    { label: 'Nut', value: record.nutCode },
    { label: 'Washer or clip', value: record.lockingCode },
    { label: 'Locating rings', value: ringCount === null ? null : rings },
    { label: 'Cap bolts', value: withUnit(record.capBoltTorqueNm, 'N·m') },
    { label: 'Grease', value: greaseName },
    { label: 'In the bearing', value: withUnit(record.greaseBearingG, 'g') },
    { label: 'In the housing', value: withUnit(record.greaseHousingG, 'g') },
  ]
}

const endKinds = { failed: 'failed', 'not-failed': 'removed, not failed', lost: 'lost' } as const

/** What a draft says of the bearing that leaves; once signed it is a removal of its own. ISO 15243 names the mode. */
export function removalFacts(removal: MountRecord['removal']): Fact[] {
  if (removal === null) return []
  const { endKind, modeClause, cause, detection, evidence, observer } = removal
  const mode = modeClause === null ? null : failureModeByClause(modeClause)
  return [
    { label: 'How it ended', value: endKind && endKinds[endKind] },
    { label: 'Seen', value: mode && `${modeClause} ${mode.found ? mode.row.term : ''}` },
    { label: 'Cause', value: cause },
    { label: 'Noticed by', value: detection },
    { label: 'Found', value: evidence },
    { label: 'Looked at by', value: observer },
  ]
}

function photoWords(captions: readonly string[]): string {
  if (captions.length === 0) return 'none'
  const told = captions.filter((caption) => caption !== '').join('; ')
  return `${captions.length} in the book${told ? `: ${told}` : ''}`
}
