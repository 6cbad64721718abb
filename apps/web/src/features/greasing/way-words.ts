import type { OtherWay } from './way-entry.ts'

/** What a position can be given beside regreasing by gun, and what it means there. */
export const wayWords: Readonly<Record<OtherWay, { title: string; hint: string }>> = {
  refill: {
    title: 'Automatic lubricator',
    hint: 'Refilled by the day on which it is empty. A lubricator that is empty is overdue at once.',
  },
  'check-system': {
    title: 'Central system',
    hint: 'Somebody looks whether grease comes out at this bearing: the pump alone does not tell.',
  },
  'check-oil': { title: 'Oil level', hint: 'Looked at with the machine as its maker says, standing or running.' },
  'change-oil': { title: 'Oil change', hint: 'By the calendar or by run hours, whichever comes first.' },
  'turn-shaft': {
    title: 'Turning while it stands by',
    hint: 'A few revolutions, stopped in another place: rollers that never move print into the rings.',
  },
  sealed: {
    title: 'Sealed for life',
    hint: 'Nothing is put in. Every other plan of this position but turning ends; it stays in the list as sealed.',
  },
}
