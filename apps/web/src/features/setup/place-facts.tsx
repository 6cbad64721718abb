import { Button } from '@mantine/core'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { AppLink } from '../../ui/link.tsx'
import classes from './setup.module.css'

interface PlaceFactsProps {
  facts: readonly Definition[]
  change: { label: string; href: string } | false
}

/** What is known of a place, and the way to change it. */
export function PlaceFacts({ facts, change }: PlaceFactsProps) {
  return (
    <div className={classes.facts}>
      <DefinitionList items={facts} layout="row" />
      {change && (
        <Button component={AppLink} href={change.href} variant="default">
          {change.label}
        </Button>
      )}
    </div>
  )
}
