/** Whether it is the name of a time zone, such as Europe/Berlin. */
export function isTimeZone(name: string): boolean {
  try {
    return Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone.length > 0
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** The day at the plant at a moment, as 2026-11-24. */
export function plantDay(at: Date, timeZone: string): string {
  return new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(at)
}
