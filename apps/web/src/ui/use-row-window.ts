import { useWindowVirtualizer } from '@tanstack/react-virtual'
import { useLayoutEffect, useState, type RefObject } from 'react'

const drawAllUpTo = 80

interface RowWindow {
  /** Indexes of the rows to draw. */
  indexes: number[]
  /** Empty height before and after them, px. */
  before: number
  after: number
  measure: ((element: Element | null) => void) | undefined
}

/** Which rows of a long list to draw: all of a short one, of a long one those in view and a few more. */
export function useRowWindow(box: RefObject<HTMLElement | null>, count: number, rowHeight: number): RowWindow {
  const [offset, setOffset] = useState(0)
  useLayoutEffect(() => {
    if (box.current) setOffset(box.current.getBoundingClientRect().top + window.scrollY)
  }, [box, count])
  // The virtualizer changes in place; this hook does not memoise what it reads from it.
  // oxlint-disable-next-line react/incompatible-library
  const virtual = useWindowVirtualizer<Element>({
    count,
    estimateSize: () => rowHeight,
    overscan: 12,
    scrollMargin: offset,
    enabled: count > drawAllUpTo,
  })
  if (count <= drawAllUpTo) {
    return { indexes: Array.from({ length: count }, (_, i) => i), before: 0, after: 0, measure: undefined }
  }
  const items = virtual.getVirtualItems()
  return {
    indexes: items.map(({ index }) => index),
    before: Math.max(0, (items[0]?.start ?? offset) - offset),
    after: Math.max(0, virtual.getTotalSize() - ((items.at(-1)?.end ?? offset) - offset)),
    measure: virtual.measureElement,
  }
}
