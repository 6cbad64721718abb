/**
 * Reads comma separated text by RFC 4180 (quoted fields, doubled quotes), the first record being the header.
 * Throws where a record has another number of fields than the header, naming the record.
 */
export function readCsv(text: string): Record<string, string>[] {
  const [header, ...records] = splitRecords(text)
  if (!header) throw new Error('the file is empty')
  return records.map((fields, index) => {
    if (fields.length !== header.length) {
      throw new Error(`record ${index + 2} has ${fields.length} fields, the header has ${header.length}`)
    }
    return Object.fromEntries(header.map((name, column) => [name, fields[column] ?? '']))
  })
}

function splitRecords(text: string): string[][] {
  const records: string[][] = []
  let record: string[] = []
  let field = ''
  let quoted = false
  for (let at = 0; at < text.length; at += 1) {
    const char = text[at] ?? ''
    if (quoted && char === '"' && text[at + 1] === '"') {
      field += '"'
      at += 1
    } else if (char === '"') quoted = !quoted
    else if (quoted) field += char
    else if (char === ',') {
      record.push(field)
      field = ''
    } else if (char === '\n') {
      records.push([...record, field])
      record = []
      field = ''
    } else if (char !== '\r') field += char
  }
  if (field !== '' || record.length > 0) records.push([...record, field])
  return records
}
