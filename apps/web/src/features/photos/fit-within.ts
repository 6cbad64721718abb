/** The size of a picture that is drawn no larger than `sidePx` a side, in its own proportions; a small one stays as it is. */
export function fitWithin(widthPx: number, heightPx: number, sidePx: number): { widthPx: number; heightPx: number } {
  const scale = Math.min(1, sidePx / Math.max(widthPx, heightPx))
  const scaled = (px: number): number => Math.max(1, Math.round(px * scale))
  return { widthPx: scaled(widthPx), heightPx: scaled(heightPx) }
}
