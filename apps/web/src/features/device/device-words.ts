import type { OutboxItem } from '../../offline/outbox-rows.ts'

/** One line for the head of the page: how it stands. */
export function deviceSentence(open: readonly Pick<OutboxItem, 'state'>[], silent: boolean): string {
  const refused = open.filter(({ state }) => state === 'refused').length
  const waiting = open.length - refused
  const parts = [
    waiting > 0 && `${records(waiting)} not sent yet.`,
    refused > 0 && `${records(refused)} refused: ${refused === 1 ? 'it needs' : 'they need'} you.`,
    open.length === 0 && 'Everything that you wrote here is in the book.',
    silent && 'The service does not answer now.',
  ]
  return parts.filter((part) => part !== false).join(' ')
}

function records(count: number): string {
  return count === 1 ? '1 record' : `${count} records`
}

/** Why an item waits, where it is not simply its turn. */
export function waitSentence(item: Pick<OutboxItem, 'behind' | 'trouble'>, silent: boolean): string {
  if (item.behind) return 'Waits for the record before it at the same position.'
  if (item.trouble) return `Tried: ${item.trouble} It is tried again by itself.`
  return silent ? 'Is sent when there is a network.' : 'Is sent next.'
}

/** Somebody else's records: the name and how many, nothing more. */
export function othersSentence({ name, count }: { name: string; count: number }): string {
  const records = count === 1 ? '1 record' : `${count} records`
  return `${name} has ${records} on this device that ${count === 1 ? 'is' : 'are'} not sent: ${name} must sign in here to send ${count === 1 ? 'it' : 'them'}.`
}

/** Bytes as a person reads them, to two figures or whole kilobytes. */
export function sizeText(bytes: number): string {
  const megabytes = bytes / 1_000_000
  if (megabytes >= 10) return `${Math.round(megabytes)} MB`
  if (megabytes >= 1) return `${megabytes.toFixed(1)} MB`
  return `${Math.max(1, Math.round(bytes / 1000))} kB`
}
