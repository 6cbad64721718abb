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
  const name = inWords(field)
  const shown = (number: number): string => (unit === '' ? `${number}` : `${number} ${unit}`)
  if (!Number.isFinite(value)) throw new InputError('not-a-number', field, `${name} is not a number.`)
  if (value < min) throw new InputError('too-small', field, `${name} (${shown(value)}) is below ${shown(min)}.`)
  if (value > max) throw new InputError('too-large', field, `${name} (${shown(value)}) is above ${shown(max)}.`)
}

/** The name of an argument for people: outsideDiameterMm is "Outside diameter". */
function inWords(field: string): string {
  const plain = field.replace(/\[\d+\]/g, '').replace(unitAtEnd, '$1')
  const words = plain.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
  return words.charAt(0).toUpperCase() + words.slice(1)
}

const unitAtEnd = /([a-z])(Mm|Um|Kn|Nm|Rpm|Deg|Mpa|Cm3|Kg|C|K|G|GCm3|Mm2PerS)$/
