import { Button } from '@mantine/core'
import { useState } from 'react'
import { draftsOf, forgetDraft, type KeptDraft } from '../../offline/drafts.ts'
import { forgetFiles } from '../../offline/kept-files.ts'
import { useDeviceBook } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './device.module.css'

/** Forms that are half filled in on this device. */
export function Unfinished() {
  const { me, site, code } = useSite()
  const [thrown, setThrown] = useState(0)
  // after one is thrown away they are read anew
  const drafts = useDeviceBook(() => draftsOf(me.id, code), `drafts/${me.id}/${code}/${thrown}`) ?? []
  const [unwanted, setUnwanted] = useState<KeptDraft | null>(null)
  const throwAway = async ({ subject }: KeptDraft): Promise<void> => {
    setUnwanted(null)
    await forgetDraft({ personId: me.id, site: code, subject })
    // its photos would come up again with the next one
    await forgetFiles(subject)
    setThrown((count) => count + 1)
  }
  return (
    <PagePart title="Unfinished here">
      {drafts.length === 0 && (
        <p className={classes.nothing}>
          Nothing is half filled in. What you type in a sheet is kept here as you type it.
        </p>
      )}
      <ul className={classes.list} aria-label="Unfinished here">
        {drafts.map((draft) => (
          <li key={draft.subject} className={classes.item}>
            <div className={classes.text}>
              <p className={classes.subject}>
                <AppLink href={draft.address}>{draft.title}</AppLink>
              </p>
              <p className={classes.when}>
                Last typed <Timestamp at={draft.keptAt} timeZone={site.timeZone} />
              </p>
            </div>
            <div className={classes.acts}>
              <Button variant="default" onClick={() => setUnwanted(draft)}>
                Throw away<span className="visually-hidden">: {draft.title}</span>
              </Button>
            </div>
          </li>
        ))}
      </ul>
      <Confirm
        opened={unwanted !== null}
        title={`Throw away "${unwanted?.title ?? ''}"?`}
        confirmLabel="Throw away"
        tone="grave"
        onConfirm={() => unwanted && void throwAway(unwanted)}
        onCancel={() => setUnwanted(null)}
      >
        What was typed is only on this device. Once it is thrown away nobody can bring it back.
      </Confirm>
    </PagePart>
  )
}
