import { expect, it } from 'vitest'
import { notKept } from './storage-error.ts'

it.each(['ENOSPC', 'EDQUOT'])('a disk without room (%s) is named as that, whatever else is told', (code) => {
  const error = notKept(Object.assign(new Error('write'), { code }))
  expect([error.status, error.code]).toEqual([503, 'storage-not-ready'])
  expect(error.message).toMatch(/^The disk for photos is full\. The photo was not saved/)
})

it('any other failure says that the store does not answer, and keeps its cause for the log', () => {
  const cause = new Error('connect ECONNREFUSED')
  expect(notKept(cause).message).toMatch(/^The store of photos does not answer\. The photo was not saved/)
  expect(notKept(cause).cause).toBe(cause)
})
