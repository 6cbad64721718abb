import { createContext, use } from 'react'

const AfterTitle = createContext<string | null>(null)

/** Lets the frame say what stands behind every page's title: the site. */
export const AfterTitleProvider = AfterTitle.Provider

/** The browser's title: the page, the site, the book. `PageHead` sets it; a page without one sets it itself. */
export function PageTitle({ title }: { title: string }) {
  const after = use(AfterTitle)
  return <title>{[title, after, 'Shaftbook'].filter(Boolean).join(' · ')}</title>
}
