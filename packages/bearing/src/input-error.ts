/** What is wrong with a number or a text, so that a program can tell cases apart; the message is for a person. */
export type InputProblem =
  'not-a-number' | 'negative' | 'too-small' | 'too-large' | 'unknown-unit' | 'malformed' | 'conflict'

/** Refusal of an argument outside a function's domain. `field` names the argument, `message` is a sentence. */
export class InputError extends RangeError {
  override readonly name = 'InputError'
  readonly code: InputProblem
  readonly field: string

  constructor(code: InputProblem, field: string, message: string) {
    super(message)
    this.code = code
    this.field = field
  }
}

/** Throws an InputError unless the value is a finite number from min to max (both allowed). */
export function requireWithin(value: number, field: string, min: number, max: number, unit: string): void {
  const name = `${field} (${value} ${unit})`
  if (!Number.isFinite(value)) throw new InputError('not-a-number', field, `${field} is not a number.`)
  if (value < min) throw new InputError('too-small', field, `${name} is below ${min} ${unit}.`)
  if (value > max) throw new InputError('too-large', field, `${name} is above ${max} ${unit}.`)
}
