import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import classes from './states.module.css'

/** What went wrong, in the words of the service (problem+json, RFC 9457). */
export interface Problem {
  title: string
  detail?: string | undefined
  fields?: { path: string; message: string }[] | undefined
  /** Stable code, for whoever helps. */
  code?: string | undefined
  /** Nothing went wrong: it only can't be had now. */
  calm?: boolean | undefined
}

interface ErrorStateProps {
  problem: Problem
  onRetry?: (() => void) | undefined
  /** Fields by their path, named as the page names them. */
  fieldNames?: Record<string, string>
  action?: ReactNode
  heading?: 'h1' | 'h2' | 'h3'
}

/** Something failed: what is wrong, where, and what to do next. */
export function ErrorState({ problem, onRetry, fieldNames = {}, action, heading: Heading = 'h2' }: ErrorStateProps) {
  return (
    <div className={classes.state} data-tone={problem.calm ? 'calm' : 'over'} role={problem.calm ? 'status' : 'alert'}>
      <Heading className={classes.title}>{problem.title}</Heading>
      {problem.detail && <p className={classes.text}>{problem.detail}</p>}
      {problem.fields && problem.fields.length > 0 && (
        <ul className={classes.fields}>
          {problem.fields.map(({ path, message }) => (
            <li key={`${path}:${message}`}>
              <strong>{fieldNames[path] ?? path}</strong>: {message}
            </li>
          ))}
        </ul>
      )}
      {problem.code && <p className={classes.code}>Code for support: {problem.code}</p>}
      {(onRetry || action) && (
        <div className={classes.action}>
          {onRetry && (
            <Button variant="default" onClick={onRetry}>
              Try again
            </Button>
          )}
          {action}
        </div>
      )}
    </div>
  )
}
