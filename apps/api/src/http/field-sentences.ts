import type { core } from 'zod'

/** What is wrong with a field, where the contract does not say it in words of its own. */
export function fieldSentence(issue: core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'is missing' : `takes ${kinds[issue.expected] ?? issue.expected}`
    case 'too_small':
      return `takes ${bound(issue.origin, issue.inclusive === false ? 'more than' : 'at least', issue.minimum)}`
    case 'too_big':
      return `takes ${bound(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum)}`
    case 'invalid_format':
      return `takes ${formats[issue.format] ?? `the format ${issue.format}`}`
    case 'invalid_value':
      return `takes one of: ${issue.values.join(', ')}`
    case 'unrecognized_keys':
      return `has no field ${issue.keys.map((key) => `"${key}"`).join(', ')}`
    default:
      return 'cannot be read'
  }
}

const kinds: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with fields',
  record: 'an object with fields',
}

const formats: Readonly<Record<string, string>> = {
  uuid: 'an id (a UUID)',
  datetime: 'a date and time with its time zone, such as 2026-11-24T08:30:00+01:00',
  date: 'a day, such as 2026-11-24',
  email: 'an e-mail address',
}

function bound(origin: string, words: string, limit: number | bigint): string {
  if (origin === 'string') return `${words} ${limit} characters`
  if (origin === 'array') return `${words} ${limit} entries`
  return `${words} ${limit}`
}
