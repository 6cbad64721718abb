import { useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState, type ReactNode } from 'react'
import { paths } from '../paths.ts'
import { Confirm } from '../ui/confirm.tsx'
import { leaveDevice } from './device-session.ts'

/** The way out. Asks first where this device holds records of the person that are not sent. */
export function useLeaving(notSent: number): { ask: () => void; question: ReactNode } {
  const client = useQueryClient()
  const navigate = useNavigate()
  const [asking, setAsking] = useState(false)
  const leave = async (): Promise<void> => {
    setAsking(false)
    await leaveDevice()
    client.clear()
    await navigate({ to: paths.signIn })
  }
  const records = notSent === 1 ? 'A record is' : `${notSent} records are`
  const question = (
    <Confirm
      opened={asking}
      title={`Sign out with ${notSent} not sent?`}
      confirmLabel="Sign out"
      onConfirm={() => void leave()}
      onCancel={() => setAsking(false)}
    >
      {records} on this device that the service does not have yet. Nobody else can read or send them: sign in on this
      device again to send them.
    </Confirm>
  )
  return { ask: () => (notSent > 0 ? setAsking(true) : void leave()), question }
}
