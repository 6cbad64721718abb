import { useRef, useState } from 'react'
import { ProblemError } from '../../api/problem-error.ts'

/** What is wrong with the fields of a form, found here or by the service; the first of them takes the focus. */
export function useFaults<Faults extends Partial<Record<string, string>>>() {
  const form = useRef<HTMLDivElement>(null)
  const [faults, setFaults] = useState<Faults>({} as Faults)
  /** Shows what was found; true when there is something. */
  const show = (found: Faults): boolean => {
    setFaults(found)
    focusFault(form.current)
    return Object.keys(found).length > 0
  }
  const showRefusal = (error: Error): void => {
    if (!(error instanceof ProblemError)) return
    show(Object.fromEntries((error.problem.fields ?? []).map(({ path, message }) => [path, message])) as Faults)
  }
  return { form, faults, show, showRefusal, clear: () => setFaults({} as Faults) }
}

/** After the faults are drawn: to the first field that is wrong. */
function focusFault(form: HTMLElement | null): void {
  requestAnimationFrame(() => {
    const fields = ['input', 'textarea', 'select'].map((name) => `${name}[aria-invalid="true"]`)
    form?.querySelector<HTMLElement>(fields.join(','))?.focus()
  })
}
