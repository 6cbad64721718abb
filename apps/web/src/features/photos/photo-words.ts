import type { Photo, PhotoSubject } from '@shaftbook/contract/photos'
import { plantDay } from '@shaftbook/contract/time-zone'
import { formatDay } from '../../lib/format-day.ts'

const subjectWords: Readonly<Record<PhotoSubject, string>> = {
  mount: 'Mount',
  removal: 'Removal',
  greasing: 'Greasing',
  position: 'Position',
}

/** The steps of the mount sheet that photos are taken at, as they are told of later. */
const stepWords: Readonly<Record<string, string>> = {
  strip: 'as found',
  seat: 'shaft and housing',
  sign: 'as left',
}

type Told = Pick<Photo, 'caption' | 'step' | 'subjectKind' | 'tag' | 'takenAt'>

/** What a photo is of, where it has no caption: the work, its step and the day at the plant. */
export function occasionOf({ step, subjectKind, takenAt }: Omit<Told, 'caption' | 'tag'>, timeZone: string): string {
  return `${workOf({ step, subjectKind })}, ${formatDay(plantDay(new Date(takenAt), timeZone))}`
}

/** The work that a photo belongs to, with its step: `Mount, as found`. */
export function workOf({ step, subjectKind }: Pick<Told, 'step' | 'subjectKind'>): string {
  const work = subjectWords[subjectKind]
  return step === '' ? work : `${work}, ${stepWords[step] ?? step}`
}

/** A photo in words, for those who don't see it. */
export function photoText(photo: Told, timeZone: string): string {
  return photo.caption === '' ? `${photo.tag}: ${occasionOf(photo, timeZone)}` : photo.caption
}
