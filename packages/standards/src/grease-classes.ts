import { greaseClassesTable, type GreaseClassRow } from './grease-classes.data.ts'

/** Everything that the table of grease grades and codes says under one section and key, such as nlgi_grade, 2. */
export function greaseClassRows(section: string, key: string): readonly GreaseClassRow[] {
  return greaseClassesTable.rows.filter((row) => row.section === section && row.key === key)
}
