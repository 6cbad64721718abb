import { expect, test } from 'vitest'
import { occasionOf, photoText } from './photo-words.ts'

const photo = {
  tag: 'P-101',
  subjectKind: 'mount' as const,
  step: 'seat',
  caption: '',
  takenAt: '2026-11-24T23:30:00.000Z',
}

test('a photo without a caption is told of by position, work, step and day at the plant', () => {
  expect(photoText(photo, 'Europe/Berlin')).toBe('P-101: Mount, shaft and housing, 25 Nov 2026')
  expect(photoText(photo, 'America/New_York')).toBe('P-101: Mount, shaft and housing, 24 Nov 2026')
})

test('a caption says it better', () => {
  expect(photoText({ ...photo, caption: 'Fretting at the bore' }, 'Europe/Berlin')).toBe('Fretting at the bore')
})

test('work without steps is told of by its day', () => {
  expect(occasionOf({ ...photo, subjectKind: 'removal', step: '' }, 'Europe/Berlin')).toBe('Removal, 25 Nov 2026')
})
