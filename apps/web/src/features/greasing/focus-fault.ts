/** After the faults are drawn: to the first field that is wrong. */
export function focusFault(form: HTMLElement | null): void {
  requestAnimationFrame(() => {
    const fields = ['input', 'textarea', 'select'].map((name) => `${name}[aria-invalid="true"]`)
    form?.querySelector<HTMLElement>(fields.join(','))?.focus()
  })
}
