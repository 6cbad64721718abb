import { createContext, use, type AnchorHTMLAttributes, type MouseEvent, type Ref } from 'react'

export type LinkProps = AnchorHTMLAttributes<HTMLAnchorElement> & { href: string; ref?: Ref<HTMLAnchorElement> }

const FollowContext = createContext<((href: string) => void) | null>(null)

/** Lets the application follow links inside itself; without it the browser does. */
export const LinkProvider = FollowContext.Provider

/** The one link of the interface kit. The browser keeps modifier keys, targets, downloads and other sites. */
export function AppLink({ href, onClick, children, ...rest }: LinkProps) {
  const follow = use(FollowContext)
  const onPlainClick = (event: MouseEvent<HTMLAnchorElement>) => {
    onClick?.(event)
    const plain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey && !event.altKey
    const inside = href.startsWith('/') && !href.startsWith('//')
    if (!follow || event.defaultPrevented || !plain || !inside || rest.target || rest.download !== undefined) return
    event.preventDefault()
    follow(href)
  }
  return (
    <a {...rest} href={href} onClick={onPlainClick}>
      {children}
    </a>
  )
}
