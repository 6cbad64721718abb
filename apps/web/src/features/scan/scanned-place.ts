/** What a code means for the site that is open. */
export type ScannedPlace =
  | { readonly kind: 'position'; readonly reference: string }
  | { readonly kind: 'other-site'; readonly siteCode: string; readonly reference: string }
  /** A page of this book, but not a position's. */
  | { readonly kind: 'page'; readonly path: string }
  /** The address of something else. */
  | { readonly kind: 'foreign'; readonly text: string }

const longestTag = 120

/**
 * Reads what was scanned or typed: the address on a position's label, or a bare tag or id. The host is not looked at: a
 * label that was printed before the book moved still leads to its position.
 */
export function scannedPlace(scanned: string, siteCode: string): ScannedPlace {
  const text = scanned.trim()
  const path = pathOf(text)
  if (path === null) {
    const isTag = text !== '' && text.length <= longestTag && !/[\n\r\t]/.test(text) && !/^\w+:\/\//.test(text)
    return isTag ? { kind: 'position', reference: text } : { kind: 'foreign', text }
  }
  const [site, section, reference, ...more] = path
  if (section === 'at' && site && reference && more.length === 0) {
    return site === siteCode ? { kind: 'position', reference } : { kind: 'other-site', siteCode: site, reference }
  }
  const isRecord = site === siteCode && (section === 'mounts' || section === 'positions') && reference
  return isRecord ? { kind: 'page', path: `/${path.map(encodeURIComponent).join('/')}` } : { kind: 'foreign', text }
}

/** The parts of a web address's path, or null where it is none. */
function pathOf(text: string): string[] | null {
  if (!/^https?:\/\//i.test(text) || !URL.canParse(text)) return null
  try {
    return new URL(text).pathname.split('/').filter(Boolean).map(decodeURIComponent)
  } catch (error) {
    // a path with a broken escape is an address of nobody
    if (error instanceof URIError) return []
    throw error
  }
}
