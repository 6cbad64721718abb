import type { Choice, FieldGroup } from './form-spec.ts'

/** Rows of other tables that a form offers to choose from. */
export interface Offered {
  readonly bearingTypes: readonly Choice[]
  readonly kits: readonly Choice[]
  readonly charts: readonly Choice[]
}

export interface RegisterForm {
  readonly noun: string
  readonly groups: readonly FieldGroup[]
  /** What a new row begins with. */
  readonly start: Readonly<Record<string, unknown>>
}
