import type { Problem } from '@shaftbook/contract/problem'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useSite } from '../../session/site-access.tsx'
import { MountSheet } from './mount-sheet.tsx'
import { SheetInOutbox, sheetInOutboxQuery } from './sheet-in-outbox.tsx'
import type { SheetSlots } from './sheet-slots.ts'
import { sheetAddress } from './sheet-subject.ts'
import type { SheetAbout } from './use-sheet-state.ts'

/** The sheet, or where it lies in the outbox what became of it. */
export function SheetOrWaiting(props: SheetAbout & { slots?: SheetSlots }) {
  const { code } = useSite()
  const { data: item } = useSuspenseQuery(sheetInOutboxQuery(code, sheetAddress(code, props)))
  const [opened, setOpened] = useState<{ problem: Problem | null } | null>(null)
  if (item && !opened) return <SheetInOutbox item={item} onOpened={(problem) => setOpened({ problem })} />
  return <MountSheet {...props} refusedBefore={opened?.problem ?? null} />
}
