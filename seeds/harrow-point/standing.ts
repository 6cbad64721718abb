/**
 * What stands open at Harrow Point on the day that the demo is loaded, whatever day that is. Everything else is left to the
 * simulation, which keeps other positions from standing out on that day.
 */
export type Standing =
  | { kind: 'never-greased' }
  /** Its last greasing lies back this part of the interval. */
  | { kind: 'left-behind'; part: number }
  | { kind: 'unrecorded' }
  | { kind: 'mount'; outcome: 'under' | 'over' | 'thin' | 'not-proven'; daysAgo: number }

export const standings: ReadonlyMap<string, Standing> = new Map<string, Standing>([
  // the belt that was built last never came onto a round
  ...all(['SL05-HD-A', 'SL05-HD-B', 'SL05-TL-A', 'SL05-TL-B'], { kind: 'never-greased' }),
  // the far end of the galleries was left out of the last rounds, and a few others for longer
  ...all(['GA09-HD-A', 'GA09-HD-B', 'GA09-TL-A', 'GA09-TL-B', 'GA09-BD-A', 'GA09-BD-B'], leftBehind(1.25)),
  ...all(['GA10-HD-A', 'GA10-HD-B', 'GA10-TL-A', 'GA10-TL-B'], leftBehind(1.18)),
  ...all(['RP04-TL-A', 'RP04-TL-B'], leftBehind(1.36)),
  ...all(['AS05-FN-A', 'AS05-FN-B'], leftBehind(1.6)),
  ...all(['ET05-BT-A', 'ET05-BT-B'], leftBehind(1.75)),
  // in since before the register began
  ...all(['BG01-TL-A', 'BG01-TL-B'], { kind: 'unrecorded' }),
  ['RP02-HD-A', { kind: 'mount', outcome: 'over', daysAgo: 3 }],
  ['ET03-HD-A', { kind: 'mount', outcome: 'under', daysAgo: 12 }],
  ['CL01-DV-A', { kind: 'mount', outcome: 'thin', daysAgo: 24 }],
  ['GA05-HD-B', { kind: 'mount', outcome: 'over', daysAgo: 41 }],
  ['GA02-TL-B', { kind: 'mount', outcome: 'under', daysAgo: 75 }],
  ['AS06-SC-B', { kind: 'mount', outcome: 'thin', daysAgo: 96 }],
  ['DR06-HD-A', { kind: 'mount', outcome: 'over', daysAgo: 130 }],
  // judged in the month in which the site tried the rule that a reduction has to be proven
  ['ET01-BT-B', { kind: 'mount', outcome: 'not-proven', daysAgo: 160 }],
  ['SL02-TL-A', { kind: 'mount', outcome: 'not-proven', daysAgo: 171 }],
  ['SL04-HD-B', { kind: 'mount', outcome: 'under', daysAgo: 210 }],
])

function all(tags: string[], standing: Standing): [string, Standing][] {
  return tags.map((tag) => [tag, standing])
}

function leftBehind(part: number): Standing {
  return { kind: 'left-behind', part }
}
