import { Button, TextInput } from '@mantine/core'
import { useMediaQuery } from '@mantine/hooks'
import { useState, type FormEvent } from 'react'
import classes from './scan.module.css'

interface TagFieldProps {
  label: string
  description?: string
  onTag: (text: string) => void
}

/** The code typed by hand, or by a scanner that types and presses Enter. */
export function TagField({ label, description, onTag }: TagFieldProps) {
  const [text, setText] = useState('')
  const [error, setError] = useState<string | null>(null)
  // on a phone the keyboard would cover the picture
  const hasKeyboard = useMediaQuery('(pointer: fine)', undefined, { getInitialValueInEffect: false })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (text.trim() === '') return setError('Enter the tag that stands on the label')
    onTag(text)
    setText('')
  }
  return (
    <form className={classes.typed} onSubmit={submit} noValidate>
      <TextInput
        size="touch"
        label={label}
        description={description}
        value={text}
        error={error}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        enterKeyHint="go"
        data-autofocus={hasKeyboard || undefined}
        ref={(field) => {
          if (field && hasKeyboard && document.activeElement === document.body) field.focus()
        }}
        onChange={(event) => {
          setText(event.currentTarget.value)
          setError(null)
        }}
      />
      <Button type="submit" size="touch" variant="default">
        Go there
      </Button>
    </form>
  )
}
