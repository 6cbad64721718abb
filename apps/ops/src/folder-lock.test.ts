import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { lockFolder } from './folder-lock.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lock-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

it('lockFolder makes the folder, and refuses it to a second one until the first lets go', () => {
  const data = join(folder, 'deep', 'data')
  const lock = lockFolder(data)
  expect(() => lockFolder(data)).toThrow(`The data folder ${data} is in use by another Shaftbook`)
  lock.release()
  lockFolder(data).release()
})

it('lockFolder says when a file is in the way', () => {
  const file = join(folder, 'file')
  writeFileSync(file, '')
  expect(() => lockFolder(file)).toThrow(/can't be a folder because a file is in its way/)
})
