import type { BlankReason } from '@shaftbook/contract/mount-details'

/** Why a number stays blank, in words. */
export const blankWords: Record<BlankReason, string> = {
  'not-measured': 'Not measured',
  'not-reachable': 'Could not be reached',
  'no-tool': 'No tool for it here',
  'does-not-apply': 'Does not apply here',
  'not-noted': 'Measured, but not written down',
}
