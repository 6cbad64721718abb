import { CloseButton, Portal } from '@mantine/core'
import { createContext, use, useCallback, useEffect, useMemo, useState, type ReactNode } from 'react'
import classes from './notice.module.css'

interface Notice {
  id: number
  tone: 'done' | 'failed'
  text: string
  action?: { label: string; onAct: () => void } | undefined
}

interface Notices {
  /** Says that something was done; goes away by itself. */
  done: (text: string, action?: Notice['action']) => void
  /** Says that something failed; stays until it is closed. */
  failed: (text: string, action?: Notice['action']) => void
}

const NoticeContext = createContext<Notices | null>(null)
const staysMs = 8000
let lastId = 0

export function NoticeProvider({ children }: { children: ReactNode }) {
  const [shown, setShown] = useState<Notice[]>([])
  const close = useCallback((id: number) => setShown((all) => all.filter((notice) => notice.id !== id)), [])
  const notices = useMemo<Notices>(() => {
    const add = (tone: Notice['tone']) => (text: string, action?: Notice['action']) => {
      lastId += 1
      const notice: Notice = { id: lastId, tone, text, action }
      setShown((all) => [...all.slice(-2), notice])
    }
    return { done: add('done'), failed: add('failed') }
  }, [])

  return (
    <NoticeContext value={notices}>
      {children}
      <Portal>
        <section className={classes.stack} aria-label="Notices" aria-live="polite" aria-relevant="additions">
          {shown.map((notice) => (
            <NoticeCard key={notice.id} notice={notice} onClose={close} />
          ))}
        </section>
      </Portal>
    </NoticeContext>
  )
}

function NoticeCard({ notice, onClose }: { notice: Notice; onClose: (id: number) => void }) {
  const [held, setHeld] = useState(false)
  const { id, tone, action } = notice
  useEffect(() => {
    if (tone === 'failed' || held) return undefined
    const timer = setTimeout(() => onClose(id), staysMs)
    return () => clearTimeout(timer)
  }, [id, tone, held, onClose])
  return (
    <div
      className={classes.notice}
      data-tone={tone}
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <p className={classes.text}>
        <strong>{tone === 'done' ? 'Done. ' : 'Not done. '}</strong>
        {notice.text}
      </p>
      {action && (
        <button
          type="button"
          className={classes.act}
          onClick={() => {
            action.onAct()
            onClose(id)
          }}
        >
          {action.label}
        </button>
      )}
      <CloseButton aria-label="Close notice" onClick={() => onClose(id)} />
    </div>
  )
}

export function useNotice(): Notices {
  const notices = use(NoticeContext)
  if (!notices) throw new Error('useNotice needs a NoticeProvider above it')
  return notices
}
