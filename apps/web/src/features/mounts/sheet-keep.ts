import type { Sheet } from './sheet.ts'

/** Under which name an unsigned sheet is kept on this device: by person, site and what it is about. */
export function sheetKey(personId: string, site: string, about: string): string {
  return `shaftbook.mount.${personId}.${site}.${about}`
}

/** The sheet that was being filled in, with fields that are new since then from `blank`; null when there is none. */
export function keptSheet(key: string, blank: Sheet): Sheet | null {
  try {
    const text = sessionStorage.getItem(key)
    return text === null ? null : { ...blank, ...(JSON.parse(text) as Partial<Sheet>) }
  } catch {
    return null // storage is barred in this browser, or what lies there is not ours
  }
}

export function keepSheet(key: string, sheet: Sheet): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(sheet))
  } catch {
    // storage is barred or full: the sheet lasts as long as the page
  }
}

export function forgetSheet(key: string): void {
  try {
    sessionStorage.removeItem(key)
  } catch {
    // as above
  }
}
