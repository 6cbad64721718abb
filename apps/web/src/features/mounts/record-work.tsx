import type { MountRecord } from '@shaftbook/contract/mounts'
import type { ReactNode } from 'react'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { blankWords } from './blank-words.ts'
import classes from './mount-record.module.css'
import { RecordDriveSteps, RecordKitCheck, RecordSeat, RecordStartUp } from './record-tables.tsx'
import { askLabel } from './sheet-asks.ts'

/** What the sheet tells beside its readings, in the order of the work. Parts of which nothing was told are left out. */
export function RecordWork({ record }: { record: MountRecord }) {
  const { details } = record
  const { seat, kitCheck, driveSteps, startUp, blanks } = details
  const seatTold = seat !== null && (seat.shaft.length > 0 || seat.housing.length > 0 || anyTold(seat))
  const startTold = startUp !== null && (startUp.readings.length > 0 || anyTold(startUp))
  return (
    <div className={classes.work}>
      <Told title="As found" items={asFoundItems(record)} />
      {seat && seatTold && (
        <PagePart title="Shaft and housing">
          <RecordSeat seat={seat} />
        </PagePart>
      )}
      {kitCheck.length > 0 && (
        <PagePart title="Kit check">
          <RecordKitCheck lines={kitCheck} />
        </PagePart>
      )}
      {driveSteps.length > 0 && (
        <PagePart title="Drive-up, step by step">
          <RecordDriveSteps record={record} />
        </PagePart>
      )}
      <Told title="Lock, rings and seals" items={lockItems(record)} />
      <Told title="Cap and bolts" items={capItems(record)} />
      {startUp && startTold && (
        <PagePart title="Start-up check">
          <RecordStartUp startUp={startUp} />
        </PagePart>
      )}
      {Object.keys(blanks).length > 0 && (
        <PagePart title="Left blank">
          <DefinitionList
            items={Object.entries(blanks).map(([key, reason]) => ({ label: askLabel(key), value: blankWords[reason] }))}
          />
        </PagePart>
      )}
    </div>
  )
}

function anyTold(part: object): boolean {
  return Object.values(part).some((value) => value !== null && value !== '' && !Array.isArray(value))
}

/** A part with what was told; nothing where nothing was. */
function Told({ title, items }: { title: string; items: readonly (Definition | null)[] }): ReactNode {
  const told = items.filter((item) => item !== null)
  if (told.length === 0) return null
  return (
    <PagePart title={title}>
      <DefinitionList items={told} />
    </PagePart>
  )
}

function told(label: string, value: string | number | null | undefined, unit?: string): Definition | null {
  if (value === null || value === undefined || value === '') return null
  return { label, value: unit ? `${value} ${unit}` : String(value) }
}

function yesNo(label: string, value: boolean | null | undefined): Definition | null {
  return value === null || value === undefined ? null : { label, value: value ? 'yes' : 'no' }
}

function asFoundItems({ details, readings }: MountRecord): (Definition | null)[] {
  const { asFound } = details
  const found = readings.filter(({ moment }) => moment === 'found')
  return [
    told('Locating rings', asFound?.ringCount),
    told('Side of the nut', asFound?.nutSide),
    told('Seals', asFound?.seals),
    told('Grease', asFound?.grease),
    told('Clearance', found.map(({ row, typedValue, typedUnit }) => `${row} ${typedValue} ${typedUnit}`).join(', ')),
    told('Remark', asFound?.note),
  ]
}

const lockWords = { tab: 'tab of the washer', clip: 'clip', screw: 'grub screw', other: 'something else' } as const
const placeWords = {
  'both-sides': 'one on each side',
  'nut-side': 'on the side of the nut',
  'far-side': 'away from the nut',
} as const

function lockItems({ details: { locking, rings } }: MountRecord): (Definition | null)[] {
  return [
    told('Locked with', locking?.lockedWith && lockWords[locking.lockedWith]),
    told('Forward to the slot', locking?.forwardDeg, '°'),
    told('Remark on the lock', locking?.note),
    told('Rings', rings?.placed && placeWords[rings.placed]),
    told('Seals fitted', rings?.seals),
    yesNo('Seals sit and do not drag', rings?.sealsTurn),
  ]
}

const threadWords = { dry: 'dry', 'light-oil': 'oiled', 'moly-paste': 'with paste' } as const

function capItems({ details: { capBolts } }: MountRecord): (Definition | null)[] {
  if (!capBolts) return []
  const { size, propertyClass, friction, targetNm, stepsDone, marksMatch } = capBolts
  return [
    yesNo('On its own base, marks meet', marksMatch),
    told('Bolts', [size, propertyClass].filter(Boolean).join(', ')),
    told('Threads', friction && threadWords[friction]),
    told("Housing maker's torque", targetNm, 'N·m'),
    told('Crosswise at', stepsDone.map((percent) => `${percent} %`).join(', ')),
  ]
}
