import { TextInput } from '@mantine/core'
import { useEffect, useState } from 'react'

interface SearchFieldProps {
  label?: string
  placeholder?: string
  value: string
  /** Called when the person pauses, not at every key. */
  onSearch: (text: string) => void
}

const pauseMs = 300

/** The search field of a list. */
export function SearchField({ label = 'Search', placeholder, value, onSearch }: SearchFieldProps) {
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
  return (
    <TextInput
      type="search"
      label={label}
      placeholder={placeholder}
      value={text}
      autoComplete="off"
      onChange={(event) => setText(event.currentTarget.value)}
    />
  )
}
