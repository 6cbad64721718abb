import type { GreaseTask } from '@shaftbook/contract/grease-plans'

interface TaskAct {
  /** What the button says. */
  readonly log: string
  /** What was done, before "of P-101". */
  readonly subject: string
  /** When it was done, as the field asks. */
  readonly at: string
  /** How a check can end; what is chosen begins the note. */
  readonly findings: readonly string[]
}

/** How each task is logged. */
export const taskActs: Readonly<Record<GreaseTask, TaskAct>> = {
  regrease: { log: 'Log greasing', subject: 'Greasing', at: 'Greased at', findings: [] },
  refill: { log: 'Log refill', subject: 'Refill', at: 'Filled at', findings: [] },
  'check-system': {
    log: 'Log system check',
    subject: 'System check',
    at: 'Checked at',
    findings: ['Grease comes out at the bearing', 'Did not deliver, put right', 'Does not deliver'],
  },
  'check-oil': {
    log: 'Log oil check',
    subject: 'Oil check',
    at: 'Checked at',
    findings: ['Level is right', 'Low, topped up', 'Low, not topped up', 'Oil is milky, dark or foams'],
  },
  'change-oil': { log: 'Log oil change', subject: 'Oil change', at: 'Changed at', findings: [] },
  'turn-shaft': { log: 'Log turning', subject: 'Turning', at: 'Turned at', findings: [] },
}

interface TaskDanger {
  readonly title: string
  readonly text: string
}

/** The danger of each task, and what to do about it first. */
export const taskDangers: Readonly<Record<GreaseTask, TaskDanger>> = {
  regrease: {
    title: 'Rotating parts, and grease under pressure',
    text: 'Keep hands and sleeves away from the shaft; a guard stays on. Grease from a gun goes through skin: never hold a finger to the fitting, and see a doctor at once if it happened. Open the outlet; never fill a housing to the top.',
  },
  refill: {
    title: 'A lubricator can hold pressure or gas',
    text: 'Stop it and let its pressure off as its maker says before it is opened. Keep hands and sleeves away from the shaft; a guard stays on.',
  },
  'check-system': {
    title: 'Lines under pressure',
    text: 'A leaking line can inject grease through skin: never feel for a leak with the hand, and see a doctor at once if it happened. Let the pressure off before a line is opened. A guard stays on.',
  },
  'check-oil': {
    title: 'Hot oil and rotating parts',
    text: 'Look from outside the guard. Before a plug is opened the machine stands, isolated and locked, and the oil has cooled. Wipe up what is spilt.',
  },
  'change-oil': {
    title: 'Hot oil, and a machine that can start',
    text: 'Isolate and lock the machine, and let the oil cool, before a plug is opened. Catch what drains, and wipe up what is spilt.',
  },
  'turn-shaft': {
    title: 'A standby machine can start by itself',
    text: 'Isolate and lock it before a hand goes to the shaft. Hanging belts, buckets and wheels in a draught turn by themselves: block them, and turn with a tool that comes free.',
  },
}

/** "Greasing of P-101", as the device lists what it holds. */
export function subjectOf(task: GreaseTask, tag: string): string {
  return `${taskActs[task].subject} ${task === 'regrease' ? 'of' : 'at'} ${tag}`
}

/** Which task a log form opens with where its address names none: regreasing before all else, then what is due first. */
export function usualTask(place: {
  readonly plan: object | null
  readonly tasks: readonly { readonly task: GreaseTask }[]
}): GreaseTask {
  return place.plan ? 'regrease' : (place.tasks[0]?.task ?? 'regrease')
}
