import { useEffect, useState } from 'react'
import { plantDay } from '@shaftbook/contract/time-zone'

const lookEveryMs = 60_000

/** The plant's calendar day (2026-02-14); a page that stays open over midnight follows. */
export function useToday(timeZone: string): string {
  const [today, setToday] = useState(() => plantDay(new Date(), timeZone))
  useEffect(() => {
    const look = () => setToday(plantDay(new Date(), timeZone))
    look()
    const timer = setInterval(look, lookEveryMs)
    return () => clearInterval(timer)
  }, [timeZone])
  return today
}
