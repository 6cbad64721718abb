import { Drawer, Modal } from '@mantine/core'

/** What lies over a page, in a file of its own, so that it is loaded apart. */
export const overPageParts = { Drawer, Modal }
