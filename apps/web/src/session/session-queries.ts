import { readSession } from '@shaftbook/contract/access'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../api/call.ts'

/** Who is signed in. */
export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: ({ signal }) => call(readSession, {}, signal),
  staleTime: 60_000,
  retry: false,
})
