/** Whether it is the name of a time zone, such as Europe/Berlin. */
export function isTimeZone(name: string): boolean {
  try {
    return Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone.length > 0
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}
