/** A photo that is taken and not sent: small already, with what is told of it. */
export interface TakenPhoto {
  /** Made on the device, once: a second sending is the same photo. */
  id: string
  blob: Blob
  caption: string
  /** ISO 8601 instant. */
  takenAt: string
  /** The step of the work that it was taken at; empty where there are none. */
  step: string
}

export const captionLength = 300

/** When a file was taken, as far as the device knows; never later than now, whatever its clock was. */
export function takenAtOf(lastModifiedMs: number, now: Date): string {
  const isKnown = lastModifiedMs > Date.UTC(1990, 0, 1) && lastModifiedMs <= now.getTime()
  return (isKnown ? new Date(lastModifiedMs) : now).toISOString()
}
