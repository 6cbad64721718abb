import { describe, expect, it } from 'vitest'
import { installFailure, installReason, nodeVersionProblem } from '../bootstrap.mjs'

describe('nodeVersionProblem', () => {
  it.each(['20.19.0', '20.19.5', '20.20.2', '21.0.0', '24.21.0', '100.0.0'])('lets Node %s pass', (version) => {
    expect(nodeVersionProblem(version)).toBeUndefined()
  })

  it.each(['12.22.12', '18.20.8', '20.18.3', '20.9.0'])('names Node %s and the version that is needed', (version) => {
    expect(nodeVersionProblem(version)).toMatch(new RegExp(`needs Node 20\\.19 or newer and this is Node ${version}`))
  })
})

describe('installReason', () => {
  const installed = { lockHash: 'a', stamp: 'a', hasPinnedNode: true }

  it('is none when the install is finished and of this lock file', () => {
    expect(installReason(installed)).toBeUndefined()
  })

  it('tells a missing or half-finished install, a changed lock file and a missing Node apart', () => {
    expect(installReason({ ...installed, stamp: undefined })).toMatch(/no finished install/)
    expect(installReason({ ...installed, stamp: 'b' })).toMatch(/lock\.json has changed/)
    expect(installReason({ ...installed, hasPinnedNode: false })).toMatch(/Node is missing/)
  })
})

describe('installFailure', () => {
  it.each([
    ['npm error code ENOTFOUND\nnpm error network request failed', /registry does not answer/],
    ['npm error code ECONNREFUSED', /registry does not answer/],
    [
      'npm error code ENOSPC\nnpm error ENOSPC: no space left on device, write',
      /disk that holds \/plant\/book is full/,
    ],
    [
      "npm error code EACCES\nnpm error EACCES: permission denied, mkdir '/plant/book'",
      /can't be written to \/plant\/book/,
    ],
    ['Error: EROFS: read-only file system, access', /can't be written to \/plant\/book/],
    [
      'npm error code EUSAGE\nnpm error `npm ci` can only install packages when … are in sync',
      /do not belong together/,
    ],
    ['npm error something else', /its message above says why/],
  ])('says in a sentence what "%s" means', (output, sentence) => {
    expect(installFailure(output, '/plant/book')).toMatch(sentence)
  })
})
