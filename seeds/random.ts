/** A seeded source of chance: the same seed gives the same numbers on every machine. */
export interface Random {
  /** A whole number from 0 to 2³² − 1. */
  uint32(): number
  /** A number from `min` up to, not including, `max`. */
  uniform(min?: number, max?: number): number
  /** A whole number from `min` to `max`, both possible. */
  integer(min: number, max: number): number
  /** True with the probability given, 0 to 1. */
  chance(probability: number): boolean
  normal(mean: number, standardDeviation: number): number
  /** A life by Weibull's distribution: `scale` is the age by which 63.2 % have ended. */
  weibull(shape: number, scale: number): number
  pick<T>(items: readonly T[]): T
  /** One of the items, each as likely as its weight says. */
  weighted<T>(items: readonly (readonly [T, number])[]): T
  /** An id of the form UUIDv7 (RFC 9562): the time in milliseconds, then chance. */
  uuidAt(time: Date): string
  /** A stream of its own: what is drawn from it changes nothing that is drawn elsewhere. */
  fork(name: string): Random
}

/** xoshiro128** by Blackman and Vigna (public domain), its state filled by splitmix32 from the seed's text. */
export function makeRandom(seed: string): Random {
  const uint32 = xoshiro128(fillState(seed))
  const uniform = (min = 0, max = 1): number => min + (max - min) * (uint32() / 2 ** 32)
  const integer = (min: number, max: number): number => min + Math.floor(uniform(0, max - min + 1))
  return {
    uint32,
    uniform,
    integer,
    chance: (probability) => uniform() < probability,
    normal: (mean, standardDeviation) => mean + standardDeviation * standardNormal(uniform),
    weibull: (shape, scale) => scale * (-Math.log(1 - uniform())) ** (1 / shape),
    pick: (items) => itemAt(items, integer(0, items.length - 1)),
    weighted: (items) => weighted(items, uniform()),
    uuidAt: (time) => uuidV7(time, uint32),
    fork: (name) => makeRandom(`${seed}/${name}`),
  }
}

/** The generator itself, for a state of four words that are not all 0. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = rotate(d, 11)
    return result
  }
}

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by))
}

function fillState(seed: string): [number, number, number, number] {
  // FNV-1a over the text's code units, then splitmix32
  let word = 0x811c9dc5
  for (let at = 0; at < seed.length; at++) word = Math.imul(word ^ seed.charCodeAt(at), 0x01000193)
  const next = (): number => {
    word = (word + 0x9e3779b9) | 0
    let mixed = word ^ (word >>> 16)
    mixed = Math.imul(mixed, 0x21f0aaad)
    mixed ^= mixed >>> 15
    mixed = Math.imul(mixed, 0x735a2d97)
    return mixed ^ (mixed >>> 15)
  }
  return [next(), next(), next(), next()]
}

/** Box and Muller's transform. */
function standardNormal(uniform: () => number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
  return radius * Math.cos(2 * Math.PI * uniform())
}

function itemAt<T>(items: readonly T[], index: number): T {
  if (index >= items.length || index < 0) throw new RangeError('There is nothing to pick from.')
  return items[index] as T
}

function weighted<T>(items: readonly (readonly [T, number])[], drawn: number): T {
  const total = items.reduce((sum, [, weight]) => sum + weight, 0)
  let left = drawn * total
  for (const [item, weight] of items) {
    left -= weight
    if (left < 0) return item
  }
  return itemAt(items, items.length - 1)[0]
}

function uuidV7(time: Date, uint32: () => number): string {
  const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, '0')
  const stamp = hex(time.getTime(), 12)
  const version = hex(0x7000 | (uint32() & 0xfff), 4)
  const variant = hex(0x8000 | (uint32() & 0x3fff), 4)
  return `${stamp.slice(0, 8)}-${stamp.slice(8)}-${version}-${variant}-${hex(uint32() & 0xffff, 4)}${hex(uint32(), 8)}`
}
