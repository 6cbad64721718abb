import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { HitList, type ShownHit } from './hit-list.tsx'
import { partKindWords } from './part-kinds.ts'
import { hitsShown, type Hits } from './stores-queries.ts'
import classes from './stores.module.css'

/** What a search found: parts with their positions, positions with their kits, kits. */
export function Found({ hits, search }: { hits: Hits; search: string }) {
  const { code } = useSite()
  const parts = hits.parts.items.map((part): ShownHit => ({
    id: part.id,
    href: paths.part(code, part.id),
    name: part.designation,
    about: `${part.number}, ${part.description || partKindWords[part.kind]}`,
    aside: part.bin ? `bin ${part.bin}` : 'no bin',
  }))
  const positions = hits.positions.items.map((position): ShownHit => ({
    id: position.id,
    href: paths.pickList(code, position.id),
    name: position.tag,
    about: `${position.machineName}, ${position.shaftName.toLowerCase()}, ${position.name.toLowerCase()}`,
    aside: position.designation,
  }))
  const kits = hits.kits.items.map((kit): ShownHit => ({
    id: kit.id,
    href: paths.kit(code, kit.id),
    name: kit.name,
    aside: kit.positions === 1 ? '1 position' : `${kit.positions} positions`,
  }))
  if (parts.length + positions.length + kits.length === 0)
    return (
      <EmptyState
        title={`Nothing is called "${search}"`}
        text="Try a part of the tag, the basic code of the bearing, the code of a sleeve, or the store's own number."
      />
    )
  const places = <Group title="Positions: what goes on" hits={positions} more={hits.positions.nextCursor !== null} />
  const things = (
    <>
      <Group title="Parts: where they fit" hits={parts} more={hits.parts.nextCursor !== null} />
      <Group title="Kits" hits={kits} more={hits.kits.nextCursor !== null} />
    </>
  )
  const [first, second] = namesPart(hits, search) ? [things, places] : [places, things]
  return (
    <div className={classes.found}>
      <div>{first}</div>
      <div>{second}</div>
    </div>
  )
}

/** Whether the words begin a part's code or number: parts then come first, before all positions that have one in their kit. */
function namesPart({ parts }: Hits, search: string): boolean {
  const plain = (text: string) => text.replaceAll(/\s/g, '').toUpperCase()
  return parts.items.some(({ designation, number }) =>
    [designation, number].some((name) => plain(name).startsWith(plain(search))),
  )
}

function Group({ title, hits, more }: { title: string; hits: readonly ShownHit[]; more: boolean }) {
  if (hits.length === 0) return null
  return (
    <PagePart title={title} aside={more ? <span>the first {hitsShown}; type more to find the rest</span> : undefined}>
      <HitList label={title} hits={hits} />
    </PagePart>
  )
}
