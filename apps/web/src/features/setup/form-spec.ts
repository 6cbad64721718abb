import type { ReactNode } from 'react'
import type { MeasureText } from '../../ui/measure-text.ts'

interface Named {
  /** The field of the request body. */
  readonly name: string
  readonly label: string
  readonly help?: ReactNode
  /** It may stay empty; it is then sent as null, or as '' where the record keeps no null. */
  readonly optional?: 'null' | 'blank'
}

/** What a person fills in. One form draws them all. */
export type FieldSpec =
  | (Named & { readonly kind: 'text' | 'long-text' | 'email' | 'password' })
  | (Named & { readonly kind: 'number'; readonly unit: string; readonly whole?: boolean; readonly empty?: number })
  /** A clearance or a difference of clearances: typed in any unit, sent in micrometres. */
  | (Named & { readonly kind: 'clearance' })
  | (Named & { readonly kind: 'choice'; readonly choices: readonly Choice[]; readonly none?: string })
  | (Named & { readonly kind: 'yes-no'; readonly yes: string; readonly no: string })
  /** The blades of a set, one after another, in the unit that the kind of set says; sent in micrometres, thin to thick. */
  | (Named & { readonly kind: 'blades'; readonly kindField: string })
  | (Named & { readonly kind: 'day' })
  /** A moment on the plant's clock. */
  | (Named & { readonly kind: 'moment' })
  /** A moment that stands or not: "retired". Switched on, it is now. */
  | (Named & { readonly kind: 'since'; readonly on: string })

export interface Choice {
  readonly value: string
  readonly label: string
}

export type FormValue = string | MeasureText
export type FormValues = Readonly<Record<string, FormValue>>

/** Several fields under a heading of their own, or the form's first ones. */
export interface FieldGroup {
  readonly title?: string
  readonly text?: ReactNode
  readonly fields: readonly FieldSpec[]
}
