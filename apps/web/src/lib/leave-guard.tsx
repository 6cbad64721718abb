import { useBlocker } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import { useUnsent } from './unsent.ts'
import { Confirm } from '../ui/confirm.tsx'

interface LeaveGuardProps {
  /** Something was typed that is not sent yet. */
  when: boolean
  /** What happens to it: lost, or kept on this device. */
  children: ReactNode
}

/** Asks before a page with unsent input is left, inside the book and by closing the tab. */
export function LeaveGuard({ when, children }: LeaveGuardProps) {
  useUnsent(when)
  const blocker = useBlocker({
    shouldBlockFn: ({ current, next }) => when && current.pathname !== next.pathname,
    enableBeforeUnload: when,
    withResolver: true,
  })
  return (
    <Confirm
      opened={blocker.status === 'blocked'}
      title="Leave this page?"
      confirmLabel="Leave"
      cancelLabel="Stay here"
      onConfirm={() => blocker.proceed?.()}
      onCancel={() => blocker.reset?.()}
    >
      {children}
    </Confirm>
  )
}
