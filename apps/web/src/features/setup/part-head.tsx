import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { setupTrail, type TrailStep } from './setup-trail.ts'

interface PartHeadProps {
  title: string
  sentence?: ReactNode
  trail?: readonly TrailStep[]
  /** The one act of the page, when the role may do it. */
  act?: { label: string; href: string } | false
  /** What else can be done here, beside it. */
  besides?: ReactNode
}

/** The head of a page of the setup. */
export function PartHead({ title, sentence, trail, act, besides }: PartHeadProps) {
  const { code } = useSite()
  return (
    <PageHead
      title={title}
      sentence={sentence}
      trail={trail ?? setupTrail(code)}
      actions={
        (act || besides) && (
          <>
            {besides}
            {act && (
              <Button component={AppLink} href={act.href}>
                {act.label}
              </Button>
            )}
          </>
        )
      }
    />
  )
}
