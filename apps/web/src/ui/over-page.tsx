import type { DrawerProps, ModalProps } from '@mantine/core'
import { lazy, Suspense, useEffect, useState } from 'react'

const parts = () => import('./over-page-parts.ts')
const LoadedModal = lazy(async () => ({ default: (await parts()).overPageParts.Modal }))
const LoadedDrawer = lazy(async () => ({ default: (await parts()).overPageParts.Drawer }))

/** A question or a form over the page. What it is made of is fetched once the page stands, not before. */
export function Dialog(props: ModalProps) {
  const isWanted = useWanted(props.opened)
  return <Suspense>{isWanted && <LoadedModal {...props} />}</Suspense>
}

/** A sheet that comes from the lower edge of the screen. */
export function BottomSheet(props: DrawerProps) {
  const isWanted = useWanted(props.opened)
  return (
    <Suspense>
      {isWanted && <LoadedDrawer position="bottom" styles={{ content: { height: 'auto' } }} {...props} />}
    </Suspense>
  )
}

/** Whether it was opened at least once. */
function useWanted(opened: boolean): boolean {
  const [isWanted, setWanted] = useState(opened)
  if (opened && !isWanted) setWanted(true)
  useEffect(() => {
    // a network that is away is told by what is opened; here it only comes early
    parts().catch(() => undefined)
  }, [])
  return isWanted
}
