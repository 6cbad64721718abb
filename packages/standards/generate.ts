/**
 * Turns csv/*.csv into src/*.data.ts. `npm run standards` writes the files, `npm run standards:check` (--check) fails
 * when a committed file is not what the tables give.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { format, resolveConfig } from 'prettier'
import { readCsv } from './csv-text.ts'
import { certainties } from './src/table.ts'
import { bearingTables } from './specs/bearings.ts'
import { greaseAndLifeTables } from './specs/grease-and-life.ts'
import { partTables } from './specs/parts.ts'
import type { TableSpec } from './specs/spec.ts'

const folder = dirname(fileURLToPath(import.meta.url))

type Cell = string | number | null

async function render(spec: TableSpec): Promise<string> {
  const records = readCsv(readFileSync(join(folder, 'csv', `${spec.csv}.csv`), 'utf8'))
  const rows = records.map((record): Record<string, Cell> => ({ ...cells(spec, record), ...spec.derive?.(record) }))
  if (rows.some((row) => !certainties.some((known) => known === row['certainty']))) {
    throw new Error(`${spec.csv}: a row has no certainty`)
  }
  const source = `
    // Made from csv/${spec.csv}.csv by generate.ts. Change the table and run \`npm run standards\`.
    import { defineTable, type Certainty, type Taper } from './table.ts'

    export interface ${spec.rowType} {
      ${fields(rows).join('\n')}
    }

    /** ${spec.title}. ${spec.standard}. */
    export const ${spec.constant} = defineTable<${spec.rowType}>(${JSON.stringify({
      title: spec.title,
      standard: spec.standard,
      edition: spec.edition,
      rows,
    })})`
  const used = source.includes('taper: Taper') ? source : source.replace(', type Taper', '')
  const options = await resolveConfig(join(folder, 'generate.ts'))
  return format(used, { ...options, parser: 'typescript' })
}

function cells(spec: TableSpec, record: Record<string, string>): Record<string, Cell> {
  const named = Object.entries(record).flatMap(([column, text]): [string, Cell][] => {
    const field = spec.fields[column]
    if (field === undefined) throw new Error(`${spec.csv}: column ${column} is not described`)
    return field === null ? [] : [[field, cell(column, field, text, spec.text?.includes(field) ?? false)]]
  })
  return Object.fromEntries(named)
}

/** A column in mm whose field ends in Um is turned into whole micrometres. */
function cell(column: string, field: string, text: string, asText: boolean): Cell {
  if (text === '') return null
  if (asText || Number.isNaN(Number(text))) return text
  return column.endsWith('_mm') && field.endsWith('Um') ? Math.round(Number(text) * 1000) : Number(text)
}

function fields(rows: Record<string, Cell>[]): string[] {
  return Object.keys(rows[0] ?? {}).map((field) => `readonly ${field}: ${typeOf(field, rows)}`)
}

function typeOf(field: string, rows: Record<string, Cell>[]): string {
  if (field === 'certainty' || field.endsWith('Certainty')) return 'Certainty'
  if (field === 'taper') return 'Taper'
  if (field === 'note') return 'string | null'
  const values = rows.map((row) => row[field] ?? null)
  const kinds = ['string', 'number'].filter((kind) => values.some((value) => typeof value === kind))
  return [...kinds, ...(values.includes(null) ? ['null'] : [])].join(' | ')
}

const check = process.argv.includes('--check')
let stale = 0
for (const spec of [...bearingTables, ...partTables, ...greaseAndLifeTables]) {
  const path = join(folder, 'src', `${spec.file}.data.ts`)
  const wanted = await render(spec)
  if (!check) writeFileSync(path, wanted)
  else if (readFileSync(path, { encoding: 'utf8', flag: 'a+' }) !== wanted) {
    stale += 1
    console.error(`src/${spec.file}.data.ts is stale: run npm run standards`)
  }
}
if (stale > 0) process.exitCode = 1
