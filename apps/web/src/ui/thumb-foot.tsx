import type { ReactNode } from 'react'
import classes from './thumb-foot.module.css'

/** Back and Next where the thumb is: stays at the lower edge while the page moves under it. */
export function ThumbFoot({ children }: { children: ReactNode }) {
  return <div className={classes.foot}>{children}</div>
}
