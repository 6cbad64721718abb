import type { DueState } from '@shaftbook/contract/greasing'
import { dueWords, workWords } from '../greasing-reports/due-words.ts'
import type { DueWork } from '../greasing-reports/due-work.store.ts'

export interface DigestContents {
  readonly siteName: string
  readonly siteCode: string
  /** Where people reach the book; without it the mail has no links. */
  readonly address: string | undefined
  readonly today: string
  readonly work: readonly DueWork[]
  /** How many tasks there are, also those beyond what is listed. */
  readonly inAll: number
}

export interface DigestMail {
  readonly subject: string
  readonly text: string
  readonly html: string
}

const parts: readonly { title: string; states: readonly DueState[] }[] = [
  { title: 'Overdue', states: ['missed', 'overdue', 'never-greased'] },
  { title: 'Due', states: ['due'] },
  { title: 'Due soon', states: ['due-soon'] },
]
export const toldStates = parts.flatMap(({ states }) => states)

/** The mail of what is due, as text and as HTML that says the same. */
export function digestMail(contents: DigestContents): DigestMail {
  const sections = parts.flatMap(({ title, states }) => {
    const work = contents.work.filter(({ state }) => states.includes(state))
    return work.length === 0 ? [] : [{ title: `${title}: ${work.length}`, work }]
  })
  const subject = subjectOf(contents, sections)
  const closing = closingOf(contents)
  return {
    subject,
    text: [
      subject,
      ...sections.map(({ title, work }) => [title, ...work.map((each) => textLine(each, contents))].join('\n')),
      ...closing,
    ].join('\n\n'),
    html: page(subject, [
      ...sections.map(
        ({ title, work }) =>
          `<h2>${escaped(title)}</h2>\n<ul>\n${work.map((each) => `<li>${htmlLine(each, contents)}</li>`).join('\n')}\n</ul>`,
      ),
      ...closing.map((line) => `<p>${escaped(line)}</p>`),
    ]),
  }
}

function subjectOf({ siteName }: DigestContents, sections: readonly { title: string }[]): string {
  if (sections.length === 0) return `Greasing at ${siteName}: nothing is due`
  const counted = sections.map(({ title }) => title.replace(/^(.+): (\d+)$/, '$2 $1').toLowerCase())
  return `Greasing at ${siteName}: ${counted.join(', ')}`
}

function textLine(work: DueWork, contents: DigestContents): string {
  const address = addressOf(work, contents)
  return `- ${work.tag}, ${sentence(work)}${address === undefined ? '' : `\n  ${address}`}`
}

function htmlLine(work: DueWork, contents: DigestContents): string {
  const address = addressOf(work, contents)
  const tag = escaped(work.tag)
  return `${address === undefined ? `<b>${tag}</b>` : `<a href="${escaped(address)}">${tag}</a>`}, ${escaped(sentence(work))}`
}

function sentence(work: DueWork): string {
  return `${work.positionName}, ${work.machineName} (${work.areaName}): ${workWords(work)}, ${dueWords(work)}`
}

function addressOf({ positionId }: DueWork, { address, siteCode }: DigestContents): string | undefined {
  return address === undefined ? undefined : `${address}/${siteCode}/positions/${positionId}`
}

function closingOf({ work, inAll, address, siteCode }: DigestContents): string[] {
  const left = inAll - work.length
  const where = address === undefined ? 'the book under Greasing' : `${address}/${siteCode}/greasing`
  return [
    ...(left > 0 ? [`${left} more are due: see ${where}.`] : []),
    `Days, hour and areas of this mail are yours to set under Greasing, Calendar and mail.`,
  ]
}

function page(title: string, blocks: readonly string[]): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>${escaped(title)}</title></head>
<body style="font-family: sans-serif; line-height: 1.45">
<h1 style="font-size: 1.25em">${escaped(title)}</h1>
${blocks.join('\n')}
</body>
</html>
`
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

function escaped(text: string): string {
  return text.replaceAll(/[&<>"']/g, (sign) => entities[sign] as string)
}
