import { addDays } from '@shaftbook/bearing/plain-date'
import ical, { ICalEventTransparency } from 'ical-generator'
import { dueWords, workWords } from '../greasing-reports/due-words.ts'
import type { DueWork } from '../greasing-reports/due-work.store.ts'

export interface Calendar {
  /** Such as "Greasing, Harrow Point, Receiving". */
  readonly name: string
  readonly siteCode: string
  /** Where people reach the book, without a slash at its end. */
  readonly address: string
  /** The day at the plant. */
  readonly today: string
  readonly work: readonly DueWork[]
  readonly inAll: number
}

/**
 * What is due as iCalendar (RFC 5545): an all-day event a task, overdue ones on today. The same work gives the same text all
 * day long, so that its hash can stand for it.
 */
export function calendarText({ name, siteCode, address, today, work, inAll }: Calendar): string {
  const calendar = ical({
    name,
    prodId: { company: 'Shaftbook', product: 'Shaftbook', language: 'EN' },
    description: inAll > work.length ? `The ${work.length} longest due of ${inAll} tasks.` : `${inAll} tasks.`,
    ttl: 3600,
  })
  for (const each of work) {
    const day = each.dueOn < today ? today : each.dueOn
    calendar.createEvent({
      id: `${each.planId}@${siteCode}.shaftbook`,
      stamp: atMidnight(today),
      start: atMidnight(day),
      end: atMidnight(addDays(day, 1)),
      allDay: true,
      summary: `${each.state === 'overdue' || each.state === 'missed' ? 'Overdue: ' : ''}${each.tag}, ${workWords(each)}`,
      description: `${each.positionName}, ${each.machineName}: ${dueWords(each)}.`,
      location: `${each.areaName} / ${each.machineName}`,
      url: `${address}/${siteCode}/positions/${each.positionId}`,
      // a task does not make its reader busy
      transparency: ICalEventTransparency.TRANSPARENT,
    })
  }
  return calendar.toString()
}

function atMidnight(day: string): Date {
  return new Date(`${day}T00:00:00Z`)
}
