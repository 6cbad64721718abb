import { TextInput } from '@mantine/core'
import { useEffect, useRef, useState, type KeyboardEvent } from 'react'
import classes from './search-field.module.css'

interface SearchFieldProps {
  label?: string
  placeholder?: string
  value: string
  /** Called when the person pauses, not at every key. */
  onSearch: (text: string) => void
  /** Called at once with what is typed, when the person presses Enter. */
  onEnter?: (text: string) => void
  /** The key `/` brings the page's main search into focus. */
  slash?: boolean
  /** The page begins here: the field has the focus at once, but on a phone, where the keyboard would cover the page. */
  first?: boolean
}

const pauseMs = 300

/** The search field of a list. */
export function SearchField(props: SearchFieldProps) {
  const { label = 'Search', placeholder, value, onSearch, onEnter, slash = false, first = false } = props
  const field = useRef<HTMLInputElement>(null)
  const [text, setText] = useState(value)
  const [searched, setSearched] = useState(value)
  if (value !== searched) {
    setSearched(value)
    setText(value)
  }
  useEffect(() => {
    if (text.trim() === searched) return undefined
    const timer = setTimeout(() => {
      setSearched(text.trim())
      onSearch(text.trim())
    }, pauseMs)
    return () => clearTimeout(timer)
  }, [text, searched, onSearch])
  useEffect(() => {
    if (first && window.matchMedia('(pointer: fine)').matches) field.current?.focus()
  }, [first])
  useEffect(() => {
    if (!slash) return undefined
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
      event.preventDefault()
      field.current?.focus()
      field.current?.select()
    }
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [slash])
  const enter = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== 'Enter' || !onEnter) return
    event.preventDefault()
    setSearched(text.trim())
    onEnter(text.trim())
  }
  return (
    <TextInput
      ref={field}
      type="search"
      label={label}
      placeholder={placeholder}
      value={text}
      autoComplete="off"
      aria-keyshortcuts={slash ? '/' : undefined}
      onChange={(event) => setText(event.currentTarget.value)}
      onKeyDown={enter}
      rightSection={slash && text === '' ? <kbd className={classes.key}>/</kbd> : undefined}
      rightSectionPointerEvents="none"
    />
  )
}

/** A key pressed in a field or in front of an open dialog belongs to that. */
function isTyping(target: EventTarget | null): boolean {
  if (document.querySelector('[role="dialog"], dialog[open]')) return true
  return target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable="true"]') !== null
}
