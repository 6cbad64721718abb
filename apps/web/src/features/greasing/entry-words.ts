/** The way the grease takes into the bearing. */
export const entryWords = {
  side: 'from the side of the housing',
  'outer-ring-groove': 'through the groove of the outer ring',
} as const
