import type { KeyboardEvent } from 'react'

/** To the first field that is wrong, or else to the sentence that says what is; false where neither is on the screen. */
export function focusFirstFault(form: HTMLElement | null): boolean {
  const fields = ['input', 'textarea', 'select'].map((name) => `${name}[aria-invalid="true"]`)
  const first = form?.querySelector<HTMLElement>([...fields, '[data-invalid] input'].join(','))
  const target = first ?? form?.querySelector<HTMLElement>('[data-failed]')
  target?.focus({ preventScroll: true })
  // in the middle, clear of the bar that lies over the foot of the screen
  target?.scrollIntoView({ block: 'center' })
  return Boolean(target)
}

/** Enter goes to the next field, from the last one to Next. */
export function enterGoesOn(event: KeyboardEvent<HTMLElement>): void {
  const { target } = event
  if (event.key !== 'Enter' || !(target instanceof HTMLInputElement)) return
  if (['radio', 'checkbox'].includes(target.type) || 'ownEnter' in target.dataset) return
  event.preventDefault()
  const fields = [
    ...event.currentTarget.querySelectorAll<HTMLElement>(
      'input:not([type="radio"], [type="checkbox"]), select, textarea, [data-next]',
    ),
  ]
  fields[fields.indexOf(target) + 1]?.focus()
}
