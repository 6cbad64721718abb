import { describe, expect, it } from 'vitest'
import { OperatorError } from './operator-error.ts'
import { readNewSite } from './open-site.ts'

const options = [
  '--code',
  'north-mill',
  '--name',
  'North Mill',
  '--time-zone',
  'Europe/Oslo',
  '--manager',
  'Ada Quist',
  '--email',
  'Ada@North.example',
]

describe('readNewSite(options)', () => {
  it('reads the site and its manager, the e-mail in small letters', () => {
    expect(readNewSite(options)).toMatchObject({
      code: 'north-mill',
      'time-zone': 'Europe/Oslo',
      email: 'ada@north.example',
    })
  })

  it('names every option that is missing, and shows how it is done', () => {
    expect(() => readNewSite(['--code', 'north-mill'])).toThrow(OperatorError)
    expect(() => readNewSite(['--code', 'north-mill'])).toThrow(
      /--name[^]*--time-zone[^]*--manager[^]*--email[^]*npm run open-site/,
    )
  })

  it.each([
    ['North Mill', 'small letters'],
    ['sign-in', 'needs itself'],
  ])('refuses the code %s', (code, reason) => {
    expect(() => readNewSite([...options, '--code', code])).toThrow(reason)
  })

  it('refuses a time zone that does not exist', () => {
    expect(() => readNewSite([...options, '--time-zone', 'Europe/Nowhere'])).toThrow('--time-zone is not a time zone')
  })
})
