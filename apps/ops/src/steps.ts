/** Numbered steps with their durations, for the operator to watch. */
export class Steps {
  readonly #count: number
  #current = 0

  constructor(count: number) {
    this.#count = count
  }

  /** Runs a step. The work may say what it is at, and returns its result with a note on how it went. */
  async run<T>(title: string, work: (say: (text: string) => void) => Promise<[result: T, note: string]>): Promise<T> {
    this.#current += 1
    console.log(`${this.#current}/${this.#count}  ${title}`)
    const began = performance.now()
    const [result, note] = await work((text) => console.log(`     ${text}`))
    console.log(`     ${note} (${((performance.now() - began) / 1000).toFixed(1)} s)`)
    return result
  }
}
