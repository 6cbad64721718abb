import { paths } from '../../paths.ts'
import type { SheetAbout } from './use-sheet-state.ts'

/** Under which subject a sheet lies on the device. */
export function sheetSubject({ purpose, positionId, record }: SheetAbout): string {
  if (purpose === 'correction' && record) return `mount-correction/${record.id}`
  return record ? `mount-draft/${record.id}` : `mount/${positionId}`
}

export function sheetTitle({ purpose, record }: SheetAbout, tag: string): string {
  if (purpose === 'correction') return `Correction of the mount at ${tag}`
  return record ? `Draft of a mount at ${tag}` : `Mount at ${tag}`
}

/** The page on which the sheet goes on. */
export function sheetAddress(site: string, { purpose, positionId, record, plan }: SheetAbout): string {
  if (purpose === 'correction' && record) return paths.mountCorrection(site, record.id)
  if (record) return paths.mountDraft(site, record.id)
  return paths.remount(site, positionId, plan?.id)
}
