import { DomainError } from '../domain-error.ts'

const full = new Set(['ENOSPC', 'EDQUOT', 'EFBIG'])

/** The bytes could not be kept. */
export function notKept(cause: unknown): DomainError {
  const why = full.has(codeOf(cause)) ? 'The disk for photos is full.' : 'The store of photos does not answer.'
  return storageError(
    `${why} The photo was not saved: keep it, tell the one who runs the book, and send it again.`,
    cause,
  )
}

/** The bytes could not be read. */
export function notRead(cause: unknown): DomainError {
  return storageError('The store of photos does not answer: try again in a moment.', cause)
}

/** The book knows the photo, but its bytes are lost or are no longer those that were stored. */
export function notWhole(): DomainError {
  return storageError(
    'The picture is missing or damaged in the store of photos: tell the one who runs the book, who has copies of it.',
    undefined,
  )
}

function storageError(sentence: string, cause: unknown): DomainError {
  return new DomainError('storage-not-ready', sentence, [], { cause })
}

function codeOf(cause: unknown): string {
  return typeof cause === 'object' && cause !== null && 'code' in cause ? String(cause.code) : ''
}
