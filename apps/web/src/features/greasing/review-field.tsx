import { TextInput } from '@mantine/core'
import { addDays } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'

interface ReviewFieldProps {
  value: string
  error?: string | undefined
  onChange: (day: string) => void
}

/** The day on which a value that was set by hand is to be looked at again. */
export function ReviewField({ value, error, onChange }: ReviewFieldProps) {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  return (
    <TextInput
      type="date"
      label="Look at it again on"
      description="A flag reminds of it; empty: never"
      min={addDays(today, 1)}
      value={value}
      error={error}
      onChange={(event) => onChange(event.currentTarget.value)}
    />
  )
}
