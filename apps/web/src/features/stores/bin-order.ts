interface Shelved {
  bin: string | null
  lineNumber: number
}

const byBin = new Intl.Collator('en-GB', { numeric: true })

/** Lines in the order of their bins, A-2-1 before A-10-1; those without a bin come last, in the kit's own order. */
export function inBinOrder<Line extends Shelved>(lines: readonly Line[]): Line[] {
  return [...lines].sort((a, b) => {
    if (a.bin !== null && b.bin !== null && a.bin !== b.bin) return byBin.compare(a.bin, b.bin)
    if ((a.bin === null) !== (b.bin === null)) return a.bin === null ? 1 : -1
    return a.lineNumber - b.lineNumber
  })
}
