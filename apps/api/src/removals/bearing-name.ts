/** How a sentence names a bearing. */
export function bearingName({ designation, serial }: { designation: string; serial: string | null }): string {
  return serial === null ? designation : `${designation} no. ${serial}`
}
