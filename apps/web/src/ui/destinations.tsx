import type { ReactNode } from 'react'

export type DestinationKey = 'flags' | 'positions' | 'mounts' | 'greasing' | 'stores' | 'life' | 'setup'

function Glyph({ children }: { children: ReactNode }) {
  return (
    <svg
      viewBox="0 0 20 20"
      width="20"
      height="20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.5"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      focusable="false"
    >
      {children}
    </svg>
  )
}

/** The seven places of the book, in order; the first four stand in a phone's bottom bar. */
export const destinations: readonly { key: DestinationKey; label: string; glyph: ReactNode }[] = [
  {
    key: 'flags',
    label: 'Flags',
    glyph: (
      <Glyph>
        <path d="M5 18V3M5 4h10l-3 3.5L15 11H5" />
      </Glyph>
    ),
  },
  {
    key: 'positions',
    label: 'Positions',
    // A shaft with two bearings, as a drawing shows them: a square with an upright cross.
    glyph: (
      <Glyph>
        <path d="M1.5 10h17M4 5.5h4v9H4zM12 5.5h4v9h-4zM6 8.2v3.6M14 8.2v3.6" />
      </Glyph>
    ),
  },
  {
    key: 'mounts',
    label: 'Mounts',
    // A ring on its taper.
    glyph: (
      <Glyph>
        <path d="M2 14.5 18 11M2 17h16v-6M7 13.2V4.5l6-1.2v8.6M7 8.5l6-1.2" />
      </Glyph>
    ),
  },
  {
    key: 'greasing',
    label: 'Greasing',
    glyph: (
      <Glyph>
        <path d="M10 2.5c3 4 5 6.4 5 9.2A5 5 0 0 1 10 17a5 5 0 0 1-5-5.3c0-2.8 2-5.2 5-9.2ZM7.8 12a2.3 2.3 0 0 0 2.2 2.4" />
      </Glyph>
    ),
  },
  {
    key: 'stores',
    label: 'Stores',
    glyph: (
      <Glyph>
        <path d="M3 2.5v15M17 2.5v15M3 9h14M3 16h14M5.5 9V5H9v4M11 16v-4h3.5v4" />
      </Glyph>
    ),
  },
  {
    key: 'life',
    label: 'Life',
    // Survivors over time, stepping down.
    glyph: (
      <Glyph>
        <path d="M3 2.5V17h14.5M3 5h4v3h4v4h3.5v2.5h3" />
      </Glyph>
    ),
  },
  {
    key: 'setup',
    label: 'Setup',
    glyph: (
      <Glyph>
        <path d="M2.5 6h6.2M12.3 6h5.2M2.5 14h2.2M8.3 14h9.2" />
        <circle cx="10.5" cy="6" r="1.8" />
        <circle cx="6.5" cy="14" r="1.8" />
      </Glyph>
    ),
  },
]

/** The mark of the book: a shaft section inside its bearing. */
export function BookMark({ size = 24 }: { size?: number }) {
  return (
    <svg
      viewBox="0 0 32 32"
      width={size}
      height={size}
      fill="none"
      stroke="currentColor"
      aria-hidden="true"
      focusable="false"
    >
      <circle cx="16" cy="16" r="11.5" strokeWidth="2.5" />
      <circle cx="16" cy="16" r="5.5" strokeWidth="2.5" strokeDasharray="31.4 3.2" strokeDashoffset="-1.6" />
      <path d="M16 1.5v5M16 25.5v5M1.5 16h5M25.5 16h5M13.5 16h5M16 13.5v5" strokeWidth="1.25" />
    </svg>
  )
}

export function Chevron() {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" fill="none" stroke="currentColor" aria-hidden="true">
      <path d="M2.5 4.5 6 8l3.5-3.5" strokeWidth="1.5" strokeLinecap="round" />
    </svg>
  )
}
