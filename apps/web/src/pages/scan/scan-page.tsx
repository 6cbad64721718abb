import { useMutation } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { CodeScanner } from '../../features/scan/code-scanner.tsx'
import { findPosition } from '../../features/scan/scan-queries.ts'
import { scannedPlace } from '../../features/scan/scanned-place.ts'
import { TagField } from '../../features/scan/tag-field.tsx'
import classes from '../../features/scan/scan.module.css'
import { shownProblem } from '../../api/shown-problem.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'

type Answer =
  | { readonly kind: 'unknown'; readonly text: string }
  | { readonly kind: 'foreign'; readonly text: string }
  | { readonly kind: 'other-site'; readonly siteCode: string; readonly reference: string }
  | null

/** The camera looks for the label of a position and leads there; the tag can always be typed instead. */
export function ScanPage() {
  const { code, site } = useSite()
  const navigate = useNavigate()
  const lookUp = useMutation({
    mutationFn: async (scanned: string): Promise<Answer> => {
      const place = scannedPlace(scanned, code)
      if (place.kind === 'page') {
        await navigate({ to: place.path })
        return null
      }
      if (place.kind !== 'position') return place
      const found = await findPosition(code, place.reference)
      if (!found) return { kind: 'unknown', text: place.reference }
      await navigate({ to: paths.at(code, found.tag) })
      return null
    },
  })
  const onCode = (text: string): void => {
    if (!lookUp.isPending) lookUp.mutate(text)
  }
  return (
    <>
      <PageHead
        title="Scan a label"
        sentence={`The label of a position at ${site.siteName} leads to it: QR code or Data Matrix.`}
        trail={[{ label: 'Positions', href: paths.positions(code) }]}
      />
      <div className={classes.columns}>
        <CodeScanner onCode={onCode} />
        <div className={classes.beside}>
          <TagField
            label="Or type the tag"
            description="A scanner that types the code and presses Enter works here too."
            onTag={onCode}
          />
          <div aria-live="polite" className={lookUp.data || lookUp.error ? classes.result : undefined}>
            {lookUp.isPending && <p>Looking for {lookUp.variables} …</p>}
            {lookUp.data && <ScanAnswer answer={lookUp.data} />}
            {lookUp.error && <p>{shownProblem(lookUp.error).detail}</p>}
          </div>
        </div>
      </div>
    </>
  )
}

function ScanAnswer({ answer }: { answer: NonNullable<Answer> }) {
  const { code, me, site } = useSite()
  if (answer.kind === 'unknown')
    return (
      <>
        <p>
          Read: <strong>{answer.text}</strong>. No position of {site.siteName} has this tag.
        </p>
        <p>
          <AppLink href={`${paths.positions(code)}?q=${encodeURIComponent(answer.text)}`}>
            Search all positions for it
          </AppLink>
        </p>
      </>
    )
  if (answer.kind === 'foreign')
    return (
      <p>
        Read: <strong>{answer.text}</strong>. This is not the label of a position.
      </p>
    )
  const other = me.memberships.find(({ siteCode }) => siteCode === answer.siteCode)
  return other ? (
    <p>
      This label belongs to another site:{' '}
      <AppLink href={paths.at(other.siteCode, answer.reference)}>
        {answer.reference} at {other.siteName}
      </AppLink>
    </p>
  ) : (
    <p>
      This label belongs to the site “{answer.siteCode}”, which you do not belong to. Ask a manager there to let you in.
    </p>
  )
}
