import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query'
import { invalidateSite } from '../api/invalidate-site.ts'
import { ProblemError } from '../api/problem-error.ts'
import { queueWrite, reopenWrite, withdrawWrite, type Outcome, type Write } from './outbox.ts'

/** A write that was not refused: sent, or kept on this device and sent by itself. */
export type Taken<R> = Exclude<Outcome<R>, { state: 'refused' }>

/**
 * Sends a form through the outbox. A refusal takes the item out again and comes as ProblemError, so that the form
 * shows the faults at its fields; what is typed is then a draft again where the form gave `typed`.
 */
export function useOutboxSend<E extends Endpoint>(options: {
  /** What goes into the outbox before it, such as its photos. */
  first?: (() => Promise<void>) | undefined
  onTaken: (taken: Taken<Reply<E>>) => unknown
  onRefused?: (error: Error) => unknown
}): UseMutationResult<Taken<Reply<E>>, Error, Write<E>> {
  const client = useQueryClient()
  return useMutation({
    mutationFn: async (write: Write<E>) => {
      await options.first?.()
      const { id, outcome } = await queueWrite(write)
      const end = await outcome
      if (end.state !== 'refused') return end
      await (write.typed ? reopenWrite(id, { formIsOpen: true }) : withdrawWrite(id))
      throw new ProblemError(end.problem)
    },
    onSuccess: async (taken, { site }) => {
      if (taken.state === 'sent') await invalidateSite(client, site)
      await options.onTaken(taken)
    },
    onError: (error) => options.onRefused?.(error),
  })
}

/** What to say of a write that waits: it is safe, and what it waits for. */
export function waitingSentence(what: string, why: 'no-network' | 'sign-in' | 'behind' | 'later'): string {
  const wait = {
    'no-network': 'It is sent by itself when there is a network again.',
    'sign-in': 'Your session is over: sign in again, then it is sent.',
    behind: 'It is sent after the earlier records of this position.',
    later: 'The service could not take it yet; it is sent again by itself.',
  }
  return `${what} is kept on this device. ${wait[why]}`
}
