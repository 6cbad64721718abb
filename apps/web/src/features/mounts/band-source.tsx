import type { Band } from '@shaftbook/contract/judgement'
import classes from './sheet.module.css'

const kinds = {
  position: "position's own band",
  'maker-chart': "maker's chart",
  'generic-guide': 'generic reduction guide',
} as const

interface SourceShown {
  kind: string
  title: string
  edition: string | null
  page?: string | null
  row: string | null
  certainty: string | null
}

/** Where a band comes from, with the row it was read in and how sure that row is. */
export function BandSource({ source }: { source: Band['source'] | SourceShown }) {
  return <p className={classes.hint}>{bandSourceText(source)}</p>
}

export function bandSourceText({ kind, title, edition, page, row, certainty }: SourceShown): string {
  const parts = [
    kinds[kind as keyof typeof kinds] ?? title,
    kind !== 'generic-guide' && kind in kinds && title,
    edition && `edition ${edition}`,
    page && `page ${page}`,
    row && `row ${row}`,
    certainty && `certainty ${certainty}`,
  ]
  return `Band from the ${parts.filter(Boolean).join(', ')}.`
}
