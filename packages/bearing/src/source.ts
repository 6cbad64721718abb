import type { Certainty, Lookup, NoRow } from '@shaftbook/standards/table'

export type SourceKind = 'position' | 'maker-chart' | 'generic-guide' | 'standard' | 'formula' | 'site'

/** Where a number comes from, shown beside it. */
export interface Source {
  kind: SourceKind
  title: string
  edition: string | null
  /** The page of a maker's document, where the site entered one. */
  page?: string | null
  /** The row used, such as "80 < d ≤ 100 mm". */
  row: string | null
  certainty: Certainty | null
}

/** What every result carries: its source, the id of the rule it follows, and what a person has to be told. */
export interface Sourced {
  source: Source
  rule: string
  cautions: string[]
}

/** There is no answer, and the reason as a sentence: a table has no row, or the formula does not reach so far. */
export type NoAnswer = NoRow & Sourced

/** No answer, from the table or the rule that was asked. */
export function noAnswer(reason: string, title: string, rule: string): NoAnswer {
  return { found: false, reason, source: formula(title), rule, cautions: [] }
}

/** A source that is one of our formulas or rules of practice. */
export function formula(title: string): Source {
  return { kind: 'formula', title, edition: null, row: null, certainty: null }
}

/** A source that is a row of a standard's table. */
export function standardRow<Row>(lookup: Extract<Lookup<Row>, { found: true }>, row: string): Source {
  return { kind: 'standard', title: lookup.standard, edition: lookup.edition, row, certainty: lookup.certainty }
}

/** The sentence that a source of less than high certainty needs, as a list to add to cautions. */
export function certaintyCautions(source: Source): string[] {
  if (source.certainty === 'low') return [`${source.title}: this row is of low certainty, check it before use.`]
  if (source.certainty === 'medium')
    return [`${source.title}: this row is of medium certainty, compare with the maker.`]
  return []
}

/** The range of bores of a row, in words. */
export function boreRange(row: { overMm: number; inclMm: number }): string {
  return `${row.overMm} < d ≤ ${row.inclMm} mm`
}
