import { paths } from '../../paths.ts'

export interface TrailStep {
  label: string
  href: string
}

/** Where a page of the setup hangs. */
export function setupTrail(site: string, ...steps: TrailStep[]): TrailStep[] {
  return [{ label: 'Setup', href: paths.setup(site) }, ...steps]
}
