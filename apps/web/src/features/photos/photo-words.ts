import type { Photo, PhotoSubject } from '@shaftbook/contract/photos'
import { plantDay } from '@shaftbook/contract/time-zone'
import { formatDay } from '../../lib/format-day.ts'

export const subjectWords: Readonly<Record<PhotoSubject, string>> = {
  mount: 'Mount',
  removal: 'Removal',
  greasing: 'Greasing',
  position: 'Position',
}

type Told = Pick<Photo, 'caption' | 'step' | 'subjectKind' | 'tag' | 'takenAt'>

/** What a photo is of, where it has no caption: the work, its step and the day at the plant. */
export function occasionOf({ step, subjectKind, takenAt }: Omit<Told, 'caption' | 'tag'>, timeZone: string): string {
  const work = step === '' ? subjectWords[subjectKind] : `${subjectWords[subjectKind]}, ${step}`
  return `${work}, ${formatDay(plantDay(new Date(takenAt), timeZone))}`
}

/** A photo in words, for those who don't see it. */
export function photoText(photo: Told, timeZone: string): string {
  return photo.caption === '' ? `${photo.tag}: ${occasionOf(photo, timeZone)}` : photo.caption
}
