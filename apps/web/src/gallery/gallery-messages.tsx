import { Button } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../ui/caution.tsx'
import { Confirm } from '../ui/confirm.tsx'
import { DefinitionList } from '../ui/definition-list.tsx'
import { EmptyState } from '../ui/empty-state.tsx'
import { ErrorState } from '../ui/error-state.tsx'
import { LoadingRows } from '../ui/loading-rows.tsx'
import { useNotice } from '../ui/notice.tsx'
import { GallerySection } from './gallery-section.tsx'
import classes from './gallery.module.css'

export function GalleryMessages() {
  const notice = useNotice()
  const [asking, setAsking] = useState<'plain' | 'grave' | null>(null)
  return (
    <>
      <GallerySection title="Facts">
        <DefinitionList
          layout="columns"
          items={[
            { label: 'Bore', value: '100', unit: 'mm' },
            { label: 'Band', value: '0.045 to 0.060', unit: 'mm', note: 'generic guide, 80 to 100 mm' },
            { label: 'Nut', value: 'KM20, M100×2' },
            { label: 'Seat width', value: null },
          ]}
        />
      </GallerySection>
      <GallerySection title="Caution">
        <Caution title="The bearing can jump off its taper">
          Back the nut off three or four turns and leave it on until the taper has broken loose. Stand clear of the
          shaft's axis. Oil under high pressure can go through skin and gloves.
        </Caution>
      </GallerySection>
      <GallerySection title="States">
        <div className={classes.stack}>
          <EmptyState
            heading="h3"
            title="No flags in the drying house"
            text="Everything there is greased and inside its bands."
          />
          <ErrorState
            heading="h3"
            problem={{
              title: 'The mount record was not stored',
              detail: 'Row B has no reading. A record needs both rows; what you typed is still here.',
              fields: [{ path: 'after.rowB', message: 'give at least one reading' }],
              code: 'mount-row-missing',
            }}
            fieldNames={{ 'after.rowB': 'After, row B' }}
            onRetry={() => undefined}
          />
          <LoadingRows what="positions" rows={4} />
        </div>
      </GallerySection>
      <GallerySection title="Questions and notices">
        <div className={classes.acts}>
          <Button variant="default" onClick={() => setAsking('plain')}>
            Ask
          </Button>
          <Button variant="default" onClick={() => setAsking('grave')}>
            Ask gravely
          </Button>
          <Button
            variant="default"
            onClick={() =>
              notice.done('Greasing of BE-07 / DE logged, 42 g.', { label: 'Undo', onAct: () => undefined })
            }
          >
            Notice
          </Button>
          <Button
            variant="default"
            onClick={() => notice.failed('No network. The greasing is kept here and sent later.')}
          >
            Failure notice
          </Button>
        </div>
        <Confirm
          opened={asking !== null}
          title={asking === 'grave' ? 'Withdraw this mount record?' : 'Sign this mount record?'}
          confirmLabel={asking === 'grave' ? 'Withdraw' : 'Sign'}
          tone={asking ?? 'plain'}
          onConfirm={() => setAsking(null)}
          onCancel={() => setAsking(null)}
        >
          A signed record never changes. It can be corrected by a further record that names it.
        </Confirm>
      </GallerySection>
    </>
  )
}
