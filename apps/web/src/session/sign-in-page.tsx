import { signIn } from '@shaftbook/contract/access'
import { Button, PasswordInput, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type FormEvent } from 'react'
import { call } from '../api/call.ts'
import { ProblemError } from '../api/problem-error.ts'
import { owesSignOut, signOutIsPaid } from '../offline/holder.ts'
import { withSenderLock } from '../offline/sender-lock.ts'
import { payOwedSignOut, sendWaiting } from '../offline/sender.ts'
import { useDeviceBook } from '../offline/use-device.ts'
import { paths } from '../paths.ts'
import { BookMark } from '../ui/destinations.tsx'
import { settleDevice } from './device-session.ts'
import { sessionQuery } from './session-queries.ts'
import classes from './sign-in-page.module.css'

/** The way in; leads back to the page that asked for it. */
export function SignInPage() {
  const { next }: { next?: string } = useSearch({ strict: false })
  const navigate = useNavigate()
  const client = useQueryClient()
  const [email, setEmail] = useState('')
  const [password, setPassword] = useState('')
  const enter = useMutation({
    // no record of somebody else is on its way while the session changes hands
    mutationFn: () =>
      withSenderLock(async () => {
        await payOwedSignOut()
        const me = await call(signIn, { body: { email, password } })
        // the session before has lost its cookie: ending "the session" would end this one
        await signOutIsPaid()
        await settleDevice(me)
        return me
      }),
    onSuccess: async (me) => {
      client.clear()
      void sendWaiting()
      client.setQueryData(sessionQuery.queryKey, me)
      const inside = next?.startsWith('/') && !next.startsWith('//') ? next : paths.home
      await navigate({ href: inside, replace: true })
    },
  })
  const owed = useDeviceBook(owesSignOut, 'owed')
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    enter.mutate()
  }
  const faultOf = (field: string): string | undefined =>
    enter.error instanceof ProblemError ? enter.error.faultsAt(field)[0]?.message : undefined

  return (
    <main className={classes.page}>
      <title>Sign in · Shaftbook</title>
      <form className={classes.form} onSubmit={submit} noValidate>
        <div className={classes.brand}>
          <BookMark size={40} />
          <div>
            <h1 className={classes.title}>Shaftbook</h1>
            <p className={classes.sentence}>The book of every shaft position</p>
          </div>
        </div>
        {owed === true && (
          <output className={classes.owed}>
            You are signed out on this device. The service is told so as soon as there is a network.
          </output>
        )}
        <TextInput
          label="E-mail"
          type="email"
          autoComplete="username"
          required
          value={email}
          error={faultOf('email')}
          onChange={(event) => setEmail(event.currentTarget.value)}
        />
        <PasswordInput
          label="Password"
          autoComplete="current-password"
          required
          value={password}
          error={faultOf('password')}
          visibilityToggleButtonProps={{ 'aria-label': 'Show the password', tabIndex: 0 }}
          onChange={(event) => setPassword(event.currentTarget.value)}
        />
        {enter.isError && (
          <p className={classes.failed} role="alert">
            {enter.error.message}
          </p>
        )}
        <Button type="submit" fullWidth size="md" loading={enter.isPending}>
          Sign in
        </Button>
      </form>
    </main>
  )
}
