import { createContext, use, type ReactNode } from 'react'

/** Parts of other features that the page puts into the sheet. */
export interface SheetSlots {
  /** Photos of the mount at one of its steps. */
  photos?: ((at: 'strip' | 'seat' | 'sign') => ReactNode) | undefined
  /** Reads a code with the camera; calls back with what it read. */
  scanner?: ((onCode: (code: string) => void) => ReactNode) | undefined
  /** Puts the photos into the outbox, before the record that they belong to. */
  queuePhotos?: ((recordId: string) => Promise<void>) | undefined
}

const SlotsContext = createContext<SheetSlots>({})

export const SlotsProvider = SlotsContext.Provider

export function useSlots(): SheetSlots {
  return use(SlotsContext)
}
