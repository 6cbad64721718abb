import { describe, expect, it } from 'vitest'
import { readEnvironment } from './environment.ts'

describe('readEnvironment', () => {
  it('has a default for everything', () => {
    expect(readEnvironment({})).toEqual({
      PORT: 4380,
      HOST: '127.0.0.1',
      DATABASE_URL: undefined,
      DATABASE_APP_URL: undefined,
      SHAFTBOOK_DATA_DIR: '.data',
      SHAFTBOOK_PHOTOS: undefined,
      SHAFTBOOK_PHOTO_MB: 12,
      SHAFTBOOK_DEMO: true,
      SHAFTBOOK_HTTPS: false,
    })
  })

  it('takes an empty variable for one that is not set', () => {
    expect(readEnvironment({ PORT: '', DATABASE_URL: '', SHAFTBOOK_DATA_DIR: ' ' })).toEqual(readEnvironment({}))
  })

  it.each(['80.5', '-1', '65536', 'http'])('refuses PORT=%s', (port) => {
    expect(() => readEnvironment({ PORT: port })).toThrow(/^PORT is not a port number/)
  })

  it.each(['no', 'yes'])('reads SHAFTBOOK_DEMO=%s as a choice', (choice) => {
    expect(readEnvironment({ SHAFTBOOK_DEMO: choice }).SHAFTBOOK_DEMO).toBe(choice === 'yes')
  })

  it('refuses a choice that is neither yes nor no', () => {
    expect(() => readEnvironment({ SHAFTBOOK_DEMO: 'maybe' })).toThrow('SHAFTBOOK_DEMO is neither yes nor no')
  })

  it('names every wrong variable, and never the password in an address', () => {
    const wrong = { PORT: 'x', DATABASE_URL: 'mysql://me:secret@db/x', DATABASE_APP_URL: 'db.example' }
    expect(() => readEnvironment(wrong)).toThrow(/PORT .*\nDATABASE_URL .*\nDATABASE_APP_URL /)
    expect(() => readEnvironment(wrong)).not.toThrow(/secret/)
  })

  it('takes the address of the book as far as its host, and refuses anything else', () => {
    expect(readEnvironment({ SHAFTBOOK_ADDRESS: 'https://book.example:8443/' }).SHAFTBOOK_ADDRESS).toBe(
      'https://book.example:8443/',
    )
    for (const SHAFTBOOK_ADDRESS of ['book.example', 'ftp://book.example', 'https://book.example/plant']) {
      expect(() => readEnvironment({ SHAFTBOOK_ADDRESS })).toThrow(/SHAFTBOOK_ADDRESS is not an address/)
    }
  })
})
