import { allEndpoints } from '@shaftbook/contract/all-endpoints'
import { expect, it } from 'vitest'
import { pagesOpenedFirst } from './pages-ahead.ts'

it('what a page asks for ahead is read by an endpoint of the contract', () => {
  const read = allEndpoints
    .filter(({ method }) => method === 'GET')
    .map(({ path }) => new RegExp(`^${path.replaceAll(/:\w+/g, '[^/]+')}$`))
  const asked = pagesOpenedFirst.flatMap(({ asks }) => asks.map((ask) => ask.split('?')[0] ?? ''))
  expect(asked.filter((path) => !read.some((pattern) => pattern.test(path)))).toEqual([])
})
