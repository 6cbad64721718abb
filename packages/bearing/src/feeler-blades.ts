import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { toNanometres, toUm, umFromNanometres } from './units.ts'

/** A stack of blades laid together; thicknesses in µm, thickest first. */
export interface BladeStack {
  bladesUm: number[]
  totalUm: number
}

export type WantedStack =
  | (Sourced & BladeStack & { kind: 'stack' })
  | (Sourced & { kind: 'no-stack'; sentence: string; nextBelow: BladeStack | null; nextAbove: BladeStack | null })

/** More blades in one stack trap oil and spring apart. */
export const usualMaxBlades = 3

/**
 * The stack with the fewest blades of a site's set that makes a wanted thickness exactly (blades in µm, each once; inch
 * blades converted first). Where none does, the nearest below and above come back. 1 to 60 blades, up to 4 in a stack.
 */
export function stackFor(wantedUm: number, setUm: readonly number[], maxBlades = usualMaxBlades): WantedStack {
  requireWithin(wantedUm, 'wantedUm', 1, 5000, 'µm')
  const wantedNm = toNanometres(wantedUm, 'um')
  const stacks = stacksOf(setUm, maxBlades)
  const exact = stacks.find((stack) => toNanometres(stack.totalUm, 'um') === wantedNm)
  const sourced = { source: formula('blades of the set, fewest first'), rule: 'R-UNIT', cautions: [] }
  if (exact) return { ...sourced, kind: 'stack', ...exact }
  const nextBelow = stacks.findLast((stack) => toNanometres(stack.totalUm, 'um') < wantedNm) ?? null
  const nextAbove = stacks.find((stack) => toNanometres(stack.totalUm, 'um') > wantedNm) ?? null
  const sentence = `No stack of up to ${maxBlades} blades of this set makes ${wantedUm} µm: take the next one below or above.`
  return { ...sourced, kind: 'no-stack', sentence, nextBelow, nextAbove }
}

export interface StackSequence extends Sourced {
  /** From the first to try, near the bench clearance, to the last, at the target. */
  stacks: BladeStack[]
}

/** Thicknesses closer together than this are not worth a try each. */
export const usualStepUm = 10

/**
 * The stacks to try one after the other while driving up: from bench clearance down to the target (the mounted clearance
 * wanted), at least a step apart, all in µm. The last is the thinnest stack that is not below the target.
 */
export function stackSequence(
  benchUm: number,
  targetUm: number,
  setUm: readonly number[],
  { stepUm = usualStepUm, maxBlades = usualMaxBlades }: { stepUm?: number; maxBlades?: number } = {},
): StackSequence {
  requireWithin(benchUm, 'benchUm', 1, 5000, 'µm')
  requireWithin(targetUm, 'targetUm', 0, benchUm, 'µm')
  requireWithin(stepUm, 'stepUm', 0, 500, 'µm')
  const [bench, target, step] = [benchUm, targetUm, stepUm].map((um) => toNanometres(um, 'um')) as [
    number,
    number,
    number,
  ]
  const stacks = downTo(target, bench, step, stacksOf(setUm, maxBlades))
  const none = stacks.length === 0 ? ['No stack of this set lies between bench clearance and target.'] : []
  return {
    stacks,
    source: formula('blades of the set, from bench clearance to target'),
    rule: 'R-UNIT',
    cautions: [...none, 'Never turn the ring on a blade; feel the unloaded rollers, both rows.'],
  }
}

/**
 * The same sequence from stacks that were worked out before (stacksOf): from a clearance down to a target, at least a step
 * apart, all in µm. Empty where none lies between.
 */
export function stacksDownTo(
  fromUm: number,
  targetUm: number,
  stacks: readonly BladeStack[],
  stepUm = usualStepUm,
): BladeStack[] {
  const [target, from, step] = [targetUm, fromUm, stepUm].map((um) => toNanometres(um, 'um')) as [
    number,
    number,
    number,
  ]
  return downTo(target, from, step, stacks)
}

function downTo(targetNm: number, fromNm: number, stepNm: number, stacks: readonly BladeStack[]): BladeStack[] {
  const upwards: BladeStack[] = []
  let least = targetNm
  for (const stack of stacks) {
    const nm = toNanometres(stack.totalUm, 'um')
    if (nm < least || nm > fromNm) continue
    upwards.push(stack)
    least = nm + Math.max(1, stepNm)
  }
  return upwards.toReversed()
}

export interface GoNoGoWindow extends Sourced {
  /** The clearance lies from the stack that passes up to, not including, the one that doesn't. */
  fromUm: number
  toUm: number
  middleUm: number
  /** Standard uncertainty of the middle by the width of the window alone: width / √12. */
  standardUm: number
}

/** What a go/no-go reading says: the thickest stack that passes with drag and the thinnest that doesn't, in µm. */
export function goNoGoWindow(passesUm: number, stopsUm: number): GoNoGoWindow {
  requireWithin(passesUm, 'passesUm', 0, 2000, 'µm')
  requireWithin(stopsUm, 'stopsUm', 0, 2000, 'µm')
  if (stopsUm <= passesUm) {
    throw new InputError('conflict', 'stopsUm', 'The stack that stops has to be thicker than the one that passes.')
  }
  return {
    fromUm: passesUm,
    toUm: stopsUm,
    middleUm: toUm((passesUm + stopsUm) / 2, 'um'),
    standardUm: (stopsUm - passesUm) / Math.sqrt(12),
    source: formula('go / no-go window, rectangular'),
    rule: 'R-U',
    cautions: ['The reading is the stack that passes; the clearance may be up to one step larger.'],
  }
}

/**
 * One stack for each thickness that a set can make (blades in µm, 1 to 60 of them), the one with the fewest blades, thinnest
 * thickness first. Blades are taken in turn, so that each thickness is kept once however many ways lead to it.
 */
export function stacksOf(setUm: readonly number[], maxBlades = usualMaxBlades): BladeStack[] {
  requireWithin(setUm.length, 'bladesUm', 1, 60, 'blades')
  requireWithin(maxBlades, 'maxBlades', 1, 4, 'blades')
  const bySize: Map<number, number[]>[] = [new Map([[0, []]])]
  for (const blade of setUm.map((um) => bladeNm(um)).sort((a, b) => b - a)) {
    for (let size = Math.min(bySize.length, maxBlades) - 1; size >= 0; size -= 1) {
      const larger = (bySize[size + 1] ??= new Map<number, number[]>())
      for (const [total, used] of bySize[size] ?? [])
        if (!larger.has(total + blade)) larger.set(total + blade, [...used, blade])
    }
  }
  const fewest = new Map<number, number[]>()
  for (const stacks of bySize.slice(1))
    for (const [total, used] of stacks) if (!fewest.has(total)) fewest.set(total, used)
  return [...fewest]
    .sort(([a], [b]) => a - b)
    .map(([total, used]) => ({ bladesUm: used.map(umFromNanometres), totalUm: umFromNanometres(total) }))
}

function bladeNm(um: number): number {
  requireWithin(um, 'bladesUm', 5, 2000, 'µm')
  return toNanometres(um, 'um')
}
